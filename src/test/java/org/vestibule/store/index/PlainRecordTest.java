package org.vestibule.store.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.util.Random;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.vestibule.flow.BenchRecords;

/**
 * The quick reader of descriptions against the JSON library: it reads what it reads as the library
 * does, and nothing that the library refuses.
 */
class PlainRecordTest {

  private static final long SEED = 7;
  private static final String ODD = "\"\\{}[],: \t\u00e9\u6b6f\uD83E\uDDB7a1";

  private static String odd(Random random) {
    StringBuilder text = new StringBuilder();
    for (int length = random.nextInt(6); length > 0; length--) {
      text.appendCodePoint(ODD.codePointAt(ODD.offsetByCodePoints(0, random.nextInt(15))));
    }
    return text.toString();
  }

  private static IndexRecord with(IndexRecord record, String note, String treatment) {
    return new IndexRecord(
        record.hash(),
        record.id(),
        record.filed(),
        record.objectUid(),
        record.takenAt(),
        record.who(),
        record.shows(),
        record.device(),
        treatment,
        note);
  }

  @Test
  void whatIsWrittenInTheUsualWayIsReadQuicklyAndTheSame() {
    BenchRecords records = new BenchRecords(3000);
    for (int number = 0; number < 3000; number++) {
      IndexRecord record = records.record(number);
      String text = IndexRecordJson.write(record);
      assertThat(PlainRecord.read(text)).contains(record);
      assertThat(IndexRecordJson.parsed(text)).isEqualTo(record);
    }
    String least = IndexRecordJson.write(records.record(0)).replaceAll(",\"id\".*", "}");
    assertThat(PlainRecord.read(least)).contains(IndexRecordJson.parsed(least));
  }

  @Test
  void oddWordsComeBackAsTheyWentIn() {
    Random random = new Random(SEED);
    BenchRecords records = new BenchRecords(100);
    for (int round = 0; round < 3000; round++) {
      IndexRecord record = with(records.record(round % 100), odd(random), odd(random));
      String text = IndexRecordJson.write(record);
      assertThat(IndexRecordJson.read(text)).as("seed %d: %s", SEED, text).isEqualTo(record);
    }
  }

  /** An answer, or the kind and words of what was thrown instead. */
  private static Object told(Callable<IndexRecord> reading) {
    Object[] read = new Object[1];
    Throwable thrown = catchThrowable(() -> read[0] = reading.call());
    return thrown == null ? read[0] : thrown.getClass() + ": " + thrown.getMessage();
  }

  @Test
  void whatIsSpoiltIsReadOrRefusedAsTheLibraryDoes() {
    Random random = new Random(SEED);
    String marks = "\"{}[],:x0 ";
    BenchRecords records = new BenchRecords(100);
    for (int round = 0; round < 20_000; round++) {
      StringBuilder text =
          new StringBuilder(IndexRecordJson.write(records.record(random.nextInt(100))));
      int at = random.nextInt(text.length());
      switch (random.nextInt(4)) {
        case 0 -> text.deleteCharAt(at);
        case 1 -> text.setCharAt(at, marks.charAt(random.nextInt(marks.length())));
        case 2 -> text.insert(at, marks.charAt(random.nextInt(marks.length())));
        default -> text.setLength(at);
      }
      String spoilt = text.toString();
      assertThat(told(() -> IndexRecordJson.read(spoilt)))
          .as("seed %d, round %d: %s", SEED, round, spoilt)
          .isEqualTo(told(() -> IndexRecordJson.parsed(spoilt)));
    }
  }
}
