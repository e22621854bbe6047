package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.ExternalTool;

/** The table against pydicom's own dictionary, element by element. */
class DictionaryTest {

  private static final String LIST =
      """
      from pydicom.datadict import DicomDictionary
      for t, (vr, vm, name, retired, keyword) in sorted(DicomDictionary.items()):
          print('%08X' % t, keyword, vr.split(' ')[0], vm, 'Y' if retired else 'N', sep='|')
      """;

  /** FrameType, GrayLookupTableData and LUTData, whose multiplicity the editions word anew. */
  private static final int MOST_DIFFERENCES = 4;

  @Test
  void agreesWithAnIndependentDictionary() throws Exception {
    String list = ExternalTool.require("python3", "python3-pydicom").run("-c", LIST).text();
    List<String> differences = new ArrayList<>();
    int compared = 0;
    for (String line : list.split("\n", -1)) {
      if (line.isEmpty()) {
        continue;
      }
      String[] theirs = line.split("\\|", -1);
      if (theirs[1].isEmpty() || theirs[2].equals("NONE")) {
        continue;
      }
      int tag = Integer.parseUnsignedInt(theirs[0], 16);
      if (Tags.group(tag) == 0) {
        continue; // command elements are PS3.7's, not PS3.6's
      }
      compared++;
      String ours =
          Dictionary.entry(tag)
              .map(e -> e.keyword() + "|" + Dictionary.vr(tag) + "|" + e.vm())
              .orElse("missing");
      if (!ours.equals(theirs[1] + "|" + theirs[2] + "|" + theirs[3])) {
        differences.add(line + " but ours " + ours);
      }
    }
    assertThat(compared).isGreaterThan(4800);
    assertThat(differences).as(String.join("\n", differences)).hasSizeLessThan(MOST_DIFFERENCES);
  }

  @Test
  void repeatingGroupsAreFound() {
    assertThat(Dictionary.keyword(0x60020010)).isEqualTo("OverlayRows");
    assertThat(Dictionary.keyword(0x50FE0005)).isEqualTo("CurveDimensions");
    assertThat(Dictionary.keyword(0x60010010)).isEqualTo("(6001,0010)");
    assertThat(Dictionary.keyword(0x00203102)).isEqualTo("SourceImageIDs");
    assertThat(Dictionary.keyword(0x10000013)).isEqualTo("HuffmanTableTriplet");
    assertThat(Dictionary.tag("OverlayRows")).hasValue(0x60000010);
  }

  @Test
  void everyTagConstantBearsItsKeyword() throws Exception {
    int constants = 0;
    for (Field field : Tags.class.getFields()) {
      assertThat(Dictionary.keyword(field.getInt(null))).isEqualTo(field.getName());
      constants++;
    }
    assertThat(constants).isGreaterThan(500);
  }

  @Test
  void everyLineCanBeFoundByItsTag() {
    assertThat(Dictionary.size()).isGreaterThan(5100);
    assertThat(Dictionary.entry(0x00020000)).isPresent();
    assertThat(Dictionary.entry(0xFFFEE0DD))
        .map(Dictionary.Entry::keyword)
        .contains("SequenceDelimitationItem");
    assertThat(Dictionary.vr(0x00290010)).isEqualTo(Vr.LO);
    assertThat(Dictionary.vr(0x00291001)).isEqualTo(Vr.UN);
    assertThat(Dictionary.vr(0x00080000)).isEqualTo(Vr.UL);
  }
}
