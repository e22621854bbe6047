package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Outcome;

/**
 * What people write about teeth. The expected teeth are ISO 3950 numbers (from memory) and the
 * quadrant arithmetic of the notations; how people write is common practice, no source.
 */
class TeethReaderTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "16|16",
        "11, 21|11 21",
        "14 15 16|16 15 14",
        "1.6|16",
        "#8|11",
        "# 8|11",
        "#A|55",
        "#T|85",
        "UR6|16",
        "ur 6|16",
        "upper right 6|16",
        "Right upper 6|16",
        "6┘|16",
        "└6|26",
        "┌6|36",
        "6┐|46",
        "6⏌|16",
        "⎿6|26",
        "⎾6|36",
        "6⏋|46",
        "URE|55",
        "upper right E|55",
        "E┘|55",
        "13-23|13 12 11 21 22 23",
        "23-13|13 12 11 21 22 23",
        "13–23|13 12 11 21 22 23",
        "13 to 23|13 12 11 21 22 23",
        "1.3 - 2.3|13 12 11 21 22 23",
        "#6-#11|13 12 11 21 22 23",
        "UR3-UL3|13 12 11 21 22 23",
        "18-28|18 17 16 15 14 13 12 11 21 22 23 24 25 26 27 28",
        "43-33|43 42 41 31 32 33",
        "53-63|53 52 51 61 62 63",
        "16-16|16",
        "11 and 21 & 12|12 11 21",
        "16; 17 + 18|18 17 16",
        "16, 16|16",
        "teeth 16, 17|17 16",
        "tooth 16|16",
        "upper right first molar|16",
        "maxillary left central|21",
        "mandibular right third molar|48",
        "lower left wisdom|38",
        "upper left 1st bicuspid|24",
        "lower right cuspid|43",
        "upper right deciduous second molar|55",
        "lower left second primary molar|75",
        "upper left baby canine|63",
        "upper right deciduous 5|55",
        "FDI 16, 17|17 16",
        "ISO 3950: 16|16",
        "Universal 3|16",
        "Palmer UR6|16",
        "16, 55-53, 12|16 12 55 54 53"
      })
  void whatPeopleWriteAtAnIsoSite(String text, String iso) {
    assertThat(read(Notation.ISO_3950, text).teeth()).as(text).isEqualTo(teeth(iso));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "11|23|upper left canine (23)",
        "16|28|upper left third molar (28)",
        "A|55|upper right deciduous second molar (55)",
        "1-16|18 17 16 15 14 13 12 11 21 22 23 24 25 26 27 28|"
            + "upper right third molar to upper left third molar (18-28, 16 teeth)",
        "6-11|13 12 11 21 22 23|upper right canine to upper left canine (13-23, 6 teeth)",
        "FDI 11|11|upper right central incisor (11)",
        "UR6|16|upper right first molar (16)",
      })
  void aUniversalSiteReadsUnmarkedNumbersAsItsOwnAndSaysSo(String text, String iso, String words) {
    Teeth teeth = read(Notation.UNIVERSAL, text);
    assertThat(teeth.teeth()).as(text).isEqualTo(teeth(iso));
    assertThat(teeth.words()).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ISO_3950|13-43|a range from upper right canine (13) to lower right canine (43) would cross"
            + " from one arch to the other: for the two teeth alone write \"FDI 13, 43\"; for a range"
            + " name both ends in one arch, as in FDI 13-23",
        "ISO_3950|19|\"19\" is not a tooth as ISO 3950 (FDI) writes it; it could be lower left first"
            + " molar (36) in Universal: say which is meant: write #19",
        "ISO_3950|56|\"56\" is not a tooth as ISO 3950 (FDI) writes it, nor in any other notation:"
            + " check the number, or name the tooth in words",
        "ISO_3950|4|\"4\" is not a tooth as ISO 3950 (FDI) writes it; it could be upper right second"
            + " premolar (15) in Universal; or first premolar of an unnamed quadrant in Palmer (14, 24,"
            + " 34, 44): say which is meant: write #4, or UR4 (or UL, LL, LR)",
        "ISO_3950|A|\"a\" is not a tooth as ISO 3950 (FDI) writes it; it could be upper right deciduous"
            + " second molar (55) in Universal; or central incisor of an unnamed quadrant in Palmer"
            + " (51, 61, 71, 81): say which is meant: write #A, or URA (or UL, LL, LR)",
        "PALMER|16|\"16\" is not a tooth as Palmer writes it; it could be upper right first molar (16)"
            + " in ISO 3950 (FDI); or upper left third molar (28) in Universal: say which is meant:"
            + " write FDI 16, or #16",
        "UNIVERSAL|46|\"46\" is not a tooth as Universal writes it; it could be lower right first molar"
            + " (46) in ISO 3950 (FDI): say which is meant: write FDI 46",
        "UNIVERSAL|03|\"03\" is not a tooth as Universal writes it; it could be upper right sextant in"
            + " ISO 3950 (FDI); or upper right first molar (16) in Universal: say which is meant:"
            + " write \"upper right sextant\", or #3",
        "ISO_3950|#8, 11|notations are mixed: \"#8\" is upper right central incisor (11) in Universal,"
            + " but \"11\" is upper right central incisor (11) in ISO 3950 (FDI): write all teeth in"
            + " one notation",
        "ISO_3950|#3, 01|notations are mixed: \"#3\" is upper right first molar (16) in Universal, but"
            + " \"01\" is upper arch in ISO 3950 (FDI): write all teeth in one notation",
        "UNIVERSAL|11, UR6|notations are mixed: \"11\" is upper left canine (23) in Universal, but"
            + " \"ur6\" is upper right first molar (16) in Palmer: write all teeth in one notation",
        "ISO_3950|FDI #8|notations are mixed: the text says ISO 3950 (FDI), but \"#8\" is upper right"
            + " central incisor (11) in Universal: write all teeth in one notation",
        "ISO_3950|#33|\"#33\" is not a tooth in Universal: Universal runs from #1 to #32, and #A to #T"
            + " for deciduous teeth",
        "ISO_3950|#0|\"#0\" is not a tooth in Universal: Universal runs from #1 to #32, and #A to #T for"
            + " deciduous teeth",
        "ISO_3950|1.9|\"1.9\" is not a tooth in ISO 3950 (FDI): permanent teeth count 1 to 8 from the"
            + " midline, deciduous teeth 1 to 5 (Palmer: A to E)",
        "ISO_3950|UR9|\"ur9\" is not a tooth in Palmer: permanent teeth count 1 to 8 from the midline,"
            + " deciduous teeth 1 to 5 (Palmer: A to E)",
        "ISO_3950|65┘|\"65┘\" is not one tooth with one quadrant corner: write each tooth with its own"
            + " corner, such as 6┘ (UR6) or └6 (UL6)",
        "ISO_3950|53-23|a range from upper right deciduous canine (53) to upper left canine (23) would"
            + " mix permanent and deciduous teeth: list the teeth one by one, or as ranges of one"
            + " dentition each",
        "ISO_3950|13-|a range in \"13 -\" has no tooth at one end: write both ends, such as 13-23",
        "ISO_3950|-16|a range in \"- 16\" has no tooth at one end: write both ends, such as 13-23",
        "ISO_3950|upper right|\"upper right\" does not say which tooth: add the tooth, such as \"upper"
            + " right 6\", or \"quadrant\" or \"sextant\" for an area",
        "ISO_3950|upper right permanent E|\"upper right permanent e\" contradicts itself: that would be"
            + " upper right deciduous second molar (55): name quadrant and tooth, such as \"upper"
            + " right first molar\", \"upper right 6\" or \"upper right deciduous second molar\"",
        "ISO_3950|uper right 6|\"uper\" is not understood as a tooth or an area: did you mean"
            + " \"upper\"?",
        "ISO_3950|implant|\"implant\" names no tooth: add the tooth, such as \"implant 36\"",
        "ISO_3950|implant 36, 37|it is not clear what stands at lower left second molar (37): say it at"
            + " each position, such as \"implant 36, tooth 37\"",
        "ISO_3950|implant 36 37|in \"implant 36 37\" it is not clear what \"implant\" belongs to:"
            + " separate the positions by commas and say it at each, such as \"implant 36, tooth"
            + " 37\"",
        "ISO_3950|implant 36, tooth 36|the text names implant at lower left first molar (36) and also"
            + " lower left first molar (36), which can't both be: keep the one that is true",
        "ISO_3950|', ;'|no tooth is named: write teeth as 16, UR6 or #3, or leave them out",
      })
  void ambiguousAndImpossibleTextsAreRefusedWithTheirReadings(
      Notation site, String text, String sentence) {
    assertThat(refusal(site, text)).isEqualTo(sentence);
  }

  /** A slash, a date or a bracketed row could be meant in several ways. */
  @ParameterizedTest
  @CsvSource({"11/21", "2026-11-12", "21┘12", "11.21", "1/6", "116", "13-23-33", "cat"})
  void whatIsNotPlainIsRefused(String text) {
    for (Notation site : Notation.values()) {
      assertThat(new TeethReader(site).read(text)).isInstanceOf(Outcome.Refused.class);
    }
  }

  @Test
  void anEndlessTextIsRefused() {
    assertThat(refusal(Notation.ISO_3950, "16,".repeat(200)))
        .isEqualTo(
            "the text about teeth has 600 characters, more than 500: name areas such as \"upper"
                + " arch\", or ranges such as 13-23");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "implant 36|implant at lower left first molar (36)|FDI 36 implant",
        "36 implant|implant at lower left first molar (36)|FDI 36 implant",
        "pontic 12|pontic at upper right lateral incisor (12)|FDI 12 pontic",
        "gap 46|gap at lower right first molar (46)|FDI 46 gap",
        "missing 46|gap at lower right first molar (46)|FDI 46 gap",
        "missing 14-16|gap at upper right first molar to upper right first premolar (16-14, 3"
            + " positions)|FDI 16-14 gap",
        "implant 36, tooth 37|implant at lower left first molar (36), lower left second molar (37)|"
            + "FDI 36 implant, 37 tooth",
      })
  void implantsPonticsAndGapsUseThePositionAndSaySo(String text, String words, String canonical) {
    Teeth teeth = read(Notation.ISO_3950, text);
    assertThat(teeth.words()).isEqualTo(words);
    assertThat(teeth.text()).isEqualTo(canonical);
  }

  /** Every tooth in every notation, and in words, reads back to itself. */
  @ParameterizedTest
  @EnumSource(Notation.class)
  void everyToothReadsBackToItself(Notation site) {
    for (Tooth tooth : Tooth.all()) {
      Teeth alone = Teeth.of(List.of(tooth));
      for (Notation notation : Notation.values()) {
        assertThat(read(site, alone.text(notation))).isEqualTo(alone);
      }
      assertThat(read(site, tooth.palmerSymbol())).isEqualTo(alone);
      assertThat(read(site, tooth.words())).isEqualTo(alone);
      assertThat(read(site, tooth.iso() / 10 + "." + tooth.iso() % 10)).isEqualTo(alone);
    }
    for (Tooth tooth : Tooth.all()) {
      Teeth alone = Teeth.of(List.of(tooth));
      assertThat(read(Notation.ISO_3950, tooth.toString())).isEqualTo(alone);
      assertThat(read(Notation.UNIVERSAL, tooth.universal())).isEqualTo(alone);
      assertThat(read(Notation.PALMER, tooth.palmer())).isEqualTo(alone);
    }
  }

  /** Any teeth, areas and occupants read back from their text, whatever the site's default. */
  @Test
  void anyTeethReadBackFromTheirText() {
    long seed = 20260401L;
    System.err.println("TeethReaderTest seed " + seed);
    Random random = new Random(seed);
    for (int round = 0; round < 300; round++) {
      Teeth teeth = random(random);
      for (Notation site : Notation.values()) {
        for (Notation notation : Notation.values()) {
          assertThat(read(site, teeth.text(notation)))
              .as("seed %d round %d: %s", seed, round, teeth.text(notation))
              .isEqualTo(teeth);
        }
      }
    }
  }

  private static Teeth random(Random random) {
    boolean occupants = random.nextBoolean();
    List<ToothPosition> positions =
        Tooth.all().stream()
            .filter(tooth -> random.nextInt(4) == 0)
            .map(
                tooth ->
                    new ToothPosition(
                        tooth,
                        occupants
                            ? List.of(Occupant.values()).get(random.nextInt(4))
                            : Occupant.TOOTH))
            .limit(18)
            .toList();
    List<Area> areas =
        Stream.of(Area.values()).filter(area -> random.nextInt(6) == 0).limit(2).toList();
    return positions.isEmpty() && areas.isEmpty()
        ? Teeth.of(List.of(Tooth.all().get(0)))
        : new Teeth(positions, areas);
  }

  @Test
  void noTeethHaveNoText() {
    assertThat(Teeth.NONE.isEmpty()).isTrue();
    assertThat(Teeth.NONE.text()).isEmpty();
    assertThat(Teeth.NONE.words()).isEqualTo("no teeth named");
  }

  private static Teeth read(Notation site, String text) {
    return new TeethReader(site).read(text).orThrow();
  }

  private static String refusal(Notation site, String text) {
    Outcome<Teeth> outcome = new TeethReader(site).read(text);
    assertThat(outcome).as(text).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Teeth>) outcome).sentence();
  }

  private static List<Tooth> teeth(String iso) {
    return Stream.of(iso.split(" ", -1))
        .map(digits -> Tooth.ofIso(Integer.parseInt(digits)).orThrow())
        .toList();
  }
}
