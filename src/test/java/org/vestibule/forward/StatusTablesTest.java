package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.base.ResourceTable;
import org.vestibule.dicom.net.Association;

/** Two tables speak of the status of a store: what it is, and what it does to a delivery. */
class StatusTablesTest {

  private static final List<String> KINDS = ResourceTable.lines(Association.class, "statuses.csv");

  /** The kind that the table of the network part gives; its first line that fits counts. */
  private static String kind(int status) {
    for (String line : KINDS) {
      String[] cells = line.split(",", 6);
      boolean store = cells[0].equals("store") || cells[0].equals("all");
      if (store
          && Integer.parseInt(cells[1], 16) <= status
          && status <= Integer.parseInt(cells[2], 16)) {
        return cells[3];
      }
    }
    return "FAILURE";
  }

  /** PS3.7 annex C: 0111 is a failure, which here means that nothing is left to be sent. */
  @Test
  void theyAgreeOnEveryStatus() {
    List<String> differ = new ArrayList<>();
    for (int status = 0; status <= 0xFFFF; status++) {
      StatusTable.Effect effect = StatusTable.STORE.meaning(status).effect();
      boolean stored = effect == StatusTable.Effect.ACCEPTED;
      boolean done = kind(status).equals("SUCCESS") || kind(status).equals("WARNING");
      if (stored != done) {
        differ.add(String.format(java.util.Locale.ROOT, "%04X", status));
      }
    }
    assertThat(differ).isEmpty();
    assertThat(StatusTable.STORE.meaning(0x0111).effect()).isEqualTo(StatusTable.Effect.THERE);
    assertThat(StoreStatus.answer(0x0111, "")).isInstanceOf(StoreAnswer.Accepted.class);
  }

  /** PS3.7 C.5.7: "processing failure" does not say that nothing was kept. */
  @Test
  void anArchiveThatFailedMayHaveKeptTheObjectBefore() {
    for (int status : new int[] {0x0110, 0x0210, 0x0212}) {
      assertThat(((StoreAnswer.Failed) StoreStatus.answer(status, "")).perhapsThere()).isTrue();
    }
    assertThat(((StoreAnswer.Failed) StoreStatus.answer(0xA700, "")).perhapsThere()).isFalse();
  }
}
