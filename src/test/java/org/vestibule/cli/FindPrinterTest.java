package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.flow.Find;

/** What {@code find} says of the photographs that it doesn't list. */
class FindPrinterTest {

  private static String beside(int total, boolean more) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    Find.Row row = new Find.Row("a", null, "", "", "", "", true, "", null, "00");
    FindPrinter.beside(console, new Find.Answer(List.of(), List.of(row), total, more));
    return err.toString(StandardCharsets.UTF_8);
  }

  @Test
  void theRestIsCountedOrSaidToBeMore() {
    assertThat(beside(1, false)).isEmpty();
    assertThat(beside(7, false)).isEqualTo("and 6 more; --most shows more of them.\n");
    assertThat(beside(1000, true))
        .isEqualTo("There are more than 1000; --most shows more of them.\n");
  }
}
