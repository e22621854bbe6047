package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;

/** Areas of the dentition: ISO 3950 codes, from memory. */
class AreaTest {

  @ParameterizedTest
  @CsvSource({
    "00, MOUTH, 52",
    "01, UPPER_ARCH, 26",
    "02, LOWER_ARCH, 26",
    "10, UPPER_RIGHT_QUADRANT, 13",
    "20, UPPER_LEFT_QUADRANT, 13",
    "30, LOWER_LEFT_QUADRANT, 13",
    "40, LOWER_RIGHT_QUADRANT, 13",
    "03, UPPER_RIGHT_SEXTANT, 7",
    "04, UPPER_FRONT_SEXTANT, 12",
    "05, UPPER_LEFT_SEXTANT, 7",
    "06, LOWER_LEFT_SEXTANT, 7",
    "07, LOWER_FRONT_SEXTANT, 12",
    "08, LOWER_RIGHT_SEXTANT, 7"
  })
  void everyCodeAndPhraseIsRead(String iso, Area area, int teeth) {
    TeethReader reader = new TeethReader(Notation.ISO_3950);
    Teeth expected = new Teeth(List.of(), List.of(area));
    assertThat(reader.read(iso)).isEqualTo(Outcome.done(expected));
    assertThat(area.says()).contains(area.words());
    for (String phrase : area.says()) {
      for (Notation site : Notation.values()) {
        assertThat(new TeethReader(site).read(phrase))
            .as("%s: %s", site, phrase)
            .isEqualTo(Outcome.done(expected));
      }
    }
    assertThat(area.teeth()).hasSize(teeth).doesNotHaveDuplicates();
  }

  @Test
  void quadrantsAndSextantsEachCoverTheMouthOnce() {
    assertThat(union("QUADRANT")).hasSize(52);
    assertThat(union("SEXTANT")).hasSize(52);
    for (Area area : Area.values()) {
      if (area.name().endsWith("QUADRANT")) {
        int quadrant = Integer.parseInt(area.iso()) / 10;
        assertThat(area.teeth()).allMatch(tooth -> (tooth.iso() / 10 - 1) % 4 + 1 == quadrant);
      }
    }
  }

  private static Set<Tooth> union(String kind) {
    Set<Tooth> all = new HashSet<>();
    int count = 0;
    for (Area area : Area.values()) {
      if (area.name().endsWith(kind)) {
        all.addAll(area.teeth());
        count += area.teeth().size();
      }
    }
    assertThat(count).isEqualTo(all.size());
    return all;
  }
}
