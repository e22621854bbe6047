package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;

/** Small tables: quoting as RFC 4180 has it (from memory), within one line. */
class CsvTableTest {

  @Test
  void fieldsMayBeQuotedAndHoldSeparatorsAndQuotes() throws IOException {
    CsvTable table = read("\uFEFF# a comment, with commas\n\na,b\n\"x, y\",\"say \"\"hi\"\"\"\n");
    assertThat(table.columns()).containsExactly("a", "b");
    assertThat(table.rows())
        .containsExactly(new CsvTable.Row(4, Map.of("a", "x, y", "b", "say \"hi\"")));
  }

  @Test
  void theHeadersSeparatorIsUsed() throws IOException {
    assertThat(read("a;b\n1,5;2\n").rows().get(0).get("a")).isEqualTo("1,5");
    assertThat(read("a\tb\n1;5\t2\n").rows().get(0).get("a")).isEqualTo("1;5");
  }

  @Test
  void aFieldMayListSeveralThings() throws IOException {
    assertThat(read("a\n x | y ||\n").rows().get(0).list("a")).isEqualTo(List.of("x", "y"));
  }

  @Test
  void anEndlessTableIsRefused() throws IOException {
    assertThat(CsvTable.read(new StringReader("a\n" + "1\n".repeat(20_000))))
        .isEqualTo(
            Outcome.refused("the table has more than 20000 lines", "split it, or check the file"));
  }

  private static CsvTable read(String text) throws IOException {
    return CsvTable.read(new StringReader(text)).orThrow();
  }
}
