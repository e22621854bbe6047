package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What spreadsheet programs make of teeth (common practice, no source). */
class SpreadsheetDatesTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          12. Nov             | 11-12 or 12-11
          11.Dez              | 11-12 or 12-11
          2026-12-11          | 11-12 or 12-11
          2026-12-11 00:00:00 | 11-12 or 12-11
          Nov 12              | 11-12 or 12-11
          12-Nov              | 11-12 or 12-11
          Nov-21              | 11-21 or 21-11
          11. Dezember 2026   | 11-12 or 12-11
          11 déc              | 11-12 or 12-11
          01.Jun              | 1.6 or 6.1
          1 Jun               | 1.6 or 6.1
          06.01.2026          | 1.6 or 6.1
          01/06/2026          | 1.6 or 6.1
          01. Mär             | 1.3 or 3.1
          46367               | two numbers with a dot or hyphen between them
          """)
  void saysWhatItProbablyWas(String damaged, String probably) {
    assertThat(SpreadsheetDates.probably(damaged)).contains(probably);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "11-12",
        "1.6",
        "16",
        "13-23",
        "FDI 11-12",
        "#8",
        "UR6",
        "upper right 6",
        "11, 12",
        "",
        "implant 36",
        "11/12",
        "1.6, 1.7",
        "11 12",
        "arch"
      })
  void leavesTeethAlone(String teeth) {
    assertThat(SpreadsheetDates.probably(teeth)).isEqualTo(Optional.empty());
  }
}
