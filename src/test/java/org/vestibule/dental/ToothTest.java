package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The 52 teeth against the published context groups and the arithmetic of the notations. */
class ToothTest {

  @Test
  void thereAre32PermanentAnd20DeciduousTeeth() {
    assertThat(Tooth.all()).hasSize(52);
    assertThat(Tooth.all()).filteredOn(Tooth::deciduous).hasSize(20);
    assertThat(Tooth.all()).extracting(Tooth::iso).doesNotHaveDuplicates();
    assertThat(Tooth.all()).extracting(Tooth::code).doesNotHaveDuplicates();
  }

  /** DICOM PS3.16 edition 2026b, CID 4018 and CID 4019: rows copied here by hand. */
  @ParameterizedTest
  @CsvSource({
    "11, 422653006", "16, 865995000", "18, 68085002", "23, 860780009", "28, 87704003",
    "31, 425106001", "36, 866006002", "48, 38994002", "51, 88824007", "55, 27855007",
    "65, 51943008", "73, 43281008", "85, 61868007"
  })
  void eachToothHasItsPublishedCode(int iso, String value) {
    Tooth tooth = Tooth.ofIso(iso).orThrow();
    assertThat(tooth.code().scheme()).isEqualTo("SCT");
    assertThat(tooth.code().value()).isEqualTo(value);
    assertThat(Tooth.byCode(tooth.code())).contains(tooth);
  }

  /** Codes of the same groups before the version of 2022-09-22. */
  @ParameterizedTest
  @CsvSource({"11, 22120004", "16, 5140004", "36, 89625000", "51, 245620002", "84, 245631005"})
  void supersededCodesAreRead(int iso, String value) {
    assertThat(Tooth.byCode(new Code("SCT", value, ""))).contains(Tooth.ofIso(iso).orThrow());
    assertThat(Tooth.byCode(new Code("99LOCAL", value, ""))).isEmpty();
  }

  @Test
  void everyToothIsARowOfItsContextGroup() {
    for (Tooth tooth : Tooth.all()) {
      ContextGroup group = ContextGroup.of(tooth.deciduous() ? 4019 : 4018).orElseThrow();
      assertThat(group.codes()).as("tooth %s", tooth).contains(tooth.code());
    }
  }

  /**
   * Quadrant arithmetic worked out here: q1 9-t, q2 8+t, q3 25-t, q4 24+t; deciduous letters from
   * upper right to lower right.
   */
  @Test
  void universalAndPalmerFollowFromTheQuadrants() {
    for (Tooth tooth : Tooth.all()) {
      int quadrant = tooth.iso() / 10;
      int t = tooth.iso() % 10;
      String universal =
          switch (quadrant) {
            case 1 -> "" + (9 - t);
            case 2 -> "" + (8 + t);
            case 3 -> "" + (25 - t);
            case 4 -> "" + (24 + t);
            case 5 -> "" + (char) ('F' - t);
            case 6 -> "" + (char) ('E' + t);
            case 7 -> "" + (char) ('P' - t);
            default -> "" + (char) ('O' + t);
          };
      String corner = new String[] {"UR", "UL", "LL", "LR"}[(quadrant - 1) % 4];
      String count = quadrant <= 4 ? "" + t : "" + (char) ('A' + t - 1);
      assertThat(tooth.universal()).as("Universal of %s", tooth).isEqualTo(universal);
      assertThat(tooth.palmer()).as("Palmer of %s", tooth).isEqualTo(corner + count);
    }
  }

  @Test
  void anImpossibleNumberIsRefused() {
    assertThat(Tooth.ofIso(19).toString()).contains("there is no tooth 19 in ISO 3950");
    assertThat(Tooth.ofIso(56).toString()).contains("there is no tooth 56 in ISO 3950");
  }
}
