package org.vestibule.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Tags;

/** The attribute table against PS3.6, and its condition language. */
class TableTest {

  private static final List<String[]> LINES = Tables.read("vl-photographic.csv");

  /** Representation and multiplicity come from another transcription than the dictionary's. */
  @Test
  void everyAttributeIsTheDictionarysOwn() {
    List<String> differences = new ArrayList<>();
    for (String[] line : LINES) {
      String keyword = line[0].substring(line[0].lastIndexOf('>') + 1);
      Optional<Dictionary.Entry> entry =
          Dictionary.tag(keyword).stream().boxed().findFirst().flatMap(Dictionary::entry);
      String vrs =
          entry.map(e -> String.join("/", e.vrs().stream().map(Enum::name).toList())).orElse("");
      boolean sameVm = line[3].isEmpty() || entry.filter(e -> e.vm().equals(line[3])).isPresent();
      if (!vrs.equals(line[2]) || !sameVm) {
        differences.add(line[0] + " " + line[2] + " " + line[3] + " but " + vrs);
      }
      assertThat(Tags.digits(Dictionary.tag(keyword).orElse(0)))
          .as(line[0])
          .isEqualTo(line[1].replace('X', '0'));
    }
    assertThat(LINES).hasSizeGreaterThan(1000);
    assertThat(differences).isEmpty();
  }

  @Test
  void everyLineIsWhole() {
    for (String[] line : LINES) {
      assertThat(line).as(line[0]).hasSize(13);
      assertThat(line[4]).as(line[0]).isIn("1", "1C", "2", "2C", "3");
      assertThat(line[5].isEmpty()).as(line[0]).isEqualTo(!line[4].endsWith("C"));
      assertThat(line[12]).as(line[0]).isNotEmpty();
      if (!line[8].isEmpty()) {
        for (String group : line[8].substring(2).split("\\|", -1)) {
          assertThat(Tables.read("context-groups.csv")).anyMatch(m -> m[0].equals(group));
        }
      }
    }
  }

  @Test
  void everyConditionCanBeAsked() {
    Place place = new Place(new DataSet(), new DataSet());
    int asked = 0;
    for (String[] line : LINES) {
      if (!line[5].isEmpty()) {
        assertThat(Condition.parse(line[5]).ask(place)).as(line[0]).isNotNull();
        asked++;
      }
    }
    assertThat(asked).isGreaterThan(250);
  }

  @Test
  void theLanguageMeansWhatItSays() {
    DataSet data =
        new DataSet()
            .put(Tags.SamplesPerPixel, 3)
            .put(Tags.ImageType, "ORIGINAL", "PRIMARY", "STEREO L")
            .putEmpty(Tags.WindowCenter);
    assertThat(ask("present WindowCenter", data)).isEqualTo(Truth.TRUE);
    assertThat(ask("filled WindowCenter", data)).isEqualTo(Truth.FALSE);
    assertThat(ask("absent Rows and SamplesPerPixel > 1", data)).isEqualTo(Truth.TRUE);
    assertThat(ask("present Rows or SamplesPerPixel > 3", data)).isEqualTo(Truth.FALSE);
    assertThat(ask("ImageType[3] = STEREO L|STEREO R", data)).isEqualTo(Truth.TRUE);
    assertThat(ask("ImageType = DERIVED", data)).isEqualTo(Truth.FALSE);
    assertThat(ask("unknown and present Rows", data)).isEqualTo(Truth.FALSE);
    assertThat(ask("unknown and absent Rows", data)).isEqualTo(Truth.UNKNOWN);
    assertThat(ask("unknown or absent Rows", data)).isEqualTo(Truth.TRUE);
    assertThat(ask("module VL Image", data)).isEqualTo(Truth.TRUE);
    assertThat(ask("module Specimen", data)).isEqualTo(Truth.FALSE);
    assertThat(ask("extended text", data)).isEqualTo(Truth.FALSE);
    assertThat(ask("extended text", data.put(Tags.PatientName, "é"))).isEqualTo(Truth.TRUE);
  }

  @Test
  void multiplicitiesAreReadAsTheStandardWritesThem() {
    assertThat(Multiplicity.fits("1", 2)).isFalse();
    assertThat(Multiplicity.fits("1-n", 7)).isTrue();
    assertThat(Multiplicity.fits("2-n", 1)).isFalse();
    assertThat(Multiplicity.fits("2-2n", 3)).isFalse();
    assertThat(Multiplicity.fits("3-3n", 6)).isTrue();
    assertThat(Multiplicity.fits("1-8", 9)).isFalse();
    assertThat(Multiplicity.fits("1-n/1", 4)).isTrue();
  }

  private static Truth ask(String condition, DataSet data) {
    return Condition.parse(condition).ask(new Place(data, data));
  }
}
