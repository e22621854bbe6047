package org.vestibule.deid;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.dicom.Vr;

/**
 * A mark in every attribute of Table E.1-1 (PS3.15 edition 2024b and the rows of 2025b), at the
 * top, in an item and in an item's item: none is left under any set of options, except where the
 * table says K. The table is read here on its own, not through the room's reader.
 */
class MarkedAttributesTest {

  /** What the profile's tables call the columns of each option. */
  private static final Map<ProfileOption, String> COLUMN =
      Map.of(
          ProfileOption.RETAIN_UIDS, "uids",
          ProfileOption.RETAIN_DEVICE_IDENTITY, "device",
          ProfileOption.RETAIN_INSTITUTION_IDENTITY, "institution",
          ProfileOption.RETAIN_PATIENT_CHARACTERISTICS, "characteristics",
          ProfileOption.RETAIN_FULL_DATES, "full_dates",
          ProfileOption.RETAIN_MODIFIED_DATES, "modified_dates",
          ProfileOption.CLEAN_DESCRIPTORS, "descriptors",
          ProfileOption.CLEAN_STRUCTURED_CONTENT, "structured_content");

  static final Substitutes SUBSTITUTES =
      new Substitutes(
          "PSEUDONYM-1",
          uid -> "2.25.4" + uid.length() + uid.hashCode() % 1000 + 1000,
          -20_000,
          false,
          TextCleaner.NOTHING);

  private record Row(Marked mark, Map<String, String> fields) {}

  static Stream<Set<ProfileOption>> optionSets() {
    EnumSet<ProfileOption> all = EnumSet.allOf(ProfileOption.class);
    EnumSet<ProfileOption> full = EnumSet.copyOf(all);
    full.remove(ProfileOption.RETAIN_MODIFIED_DATES);
    EnumSet<ProfileOption> modified = EnumSet.copyOf(all);
    modified.remove(ProfileOption.RETAIN_FULL_DATES);
    List<Set<ProfileOption>> sets = new ArrayList<>();
    sets.add(Set.of());
    all.forEach(option -> sets.add(Set.of(option)));
    sets.add(full);
    sets.add(modified);
    sets.add(Set.of(ProfileOption.RETAIN_DEVICE_IDENTITY, ProfileOption.RETAIN_MODIFIED_DATES));
    return sets.stream();
  }

  @ParameterizedTest
  @MethodSource("optionSets")
  void noMarkIsLeftThatTheTableTakes(Set<ProfileOption> options) throws IOException {
    List<Row> rows = table();
    assertThat(rows)
        .hasSize(654); // 621 of 2024b without the row for private attributes, 34 of 2025b
    DataSet inner = attributes(rows, 2);
    DataSet middle = attributes(rows, 1).put(Tags.AnatomicRegionModifierSequence, inner);
    DataSet top = attributes(rows, 0).put(Tags.AnatomicRegionSequence, middle);
    DataSet copy = copy(top, options);
    DataSet copiedMiddle = copy.item(Tags.AnatomicRegionSequence).orElseThrow();
    DataSet copiedInner = copiedMiddle.item(Tags.AnatomicRegionModifierSequence).orElseThrow();

    String bytes = written(copy);
    List<DataSet> levels = List.of(copy, copiedMiddle, copiedInner);
    for (int level = 0; level < 3; level++) {
      for (Row row : rows) {
        Marked mark = at(row.mark(), level);
        String what = Dictionary.keyword(mark.tag()) + " at depth " + level + " " + options;
        if (isKept(row, options)) {
          assertThat(levels.get(level).element(mark.tag())).as(what).isPresent();
          assertThat(texts(levels.get(level).element(mark.tag()).orElseThrow()))
              .as(what)
              .contains(mark.text());
        } else {
          if (mark.text().length() >= 8) {
            assertThat(bytes.contains(mark.text())).as(what).isFalse();
          }
          assertThat(
                  levels
                      .get(level)
                      .element(mark.tag())
                      .map(MarkedAttributesTest::texts)
                      .orElse(List.of()))
              .as(what)
              .noneMatch(text -> text.contains(mark.text()));
        }
      }
    }
    assertThat(bytes.contains("PRIVATE-MARK")).isFalse();
  }

  @ParameterizedTest
  @MethodSource("optionSets")
  void whatIsReplacedIsNotEmptyAndWhatIsRemovedIsGone(Set<ProfileOption> options)
      throws IOException {
    List<Row> rows = table();
    DataSet copy = copy(attributes(rows, 0), options);
    for (Row row : rows) {
      int tag = row.mark().tag();
      if (isKept(row, options) || isMoved(row, options) || Tags.group(tag) < 8) {
        continue;
      }
      switch (row.fields().get("basic")) {
        case "X" -> assertThat(copy.contains(tag)).as(Tags.text(tag)).isFalse();
        case "D", "U" ->
            assertThat(copy.element(tag).filter(e -> !e.isEmpty())).as(Tags.text(tag)).isPresent();
        case "Z", "Z/D" -> assertThat(copy.contains(tag)).as(Tags.text(tag)).isTrue();
        default -> {}
      }
    }
  }

  private static boolean isKept(Row row, Set<ProfileOption> options) {
    if (isPast(row) || (Tags.group(row.mark().tag()) & 0xFF00) == 0x6000) {
      return false;
    }
    boolean moved =
        options.contains(ProfileOption.RETAIN_MODIFIED_DATES)
            && row.fields().get("modified_dates").equals("C");
    return !moved
        && options.stream()
            .filter(COLUMN::containsKey)
            .anyMatch(option -> row.fields().get(COLUMN.get(option)).equals("K"));
  }

  private static boolean isMoved(Row row, Set<ProfileOption> options) {
    return options.contains(ProfileOption.RETAIN_MODIFIED_DATES)
        && row.fields().get("modified_dates").equals("C");
  }

  /** Elements of messages, file headers and directories never stand in a data set. */
  private static boolean isPast(Row row) {
    return Tags.group(row.mark().tag()) < 8;
  }

  private static DataSet copy(DataSet from, Set<ProfileOption> options) {
    List<Attestation> said =
        options.stream()
            .filter(ProfileOption::needsAttestation)
            .map(option -> new Attestation(option, "Tallgrass, Orla", LocalDate.of(2026, 3, 11)))
            .toList();
    return Deidentifier.deidentify(from, Confidentiality.of(options, said).orThrow(), SUBSTITUTES);
  }

  private static DataSet attributes(List<Row> rows, int level) {
    DataSet data = new DataSet();
    for (Row row : rows) {
      at(row.mark(), level).put(data);
    }
    data.put(0x00090010, Vr.LO, "PRIVATE-MARK").put(0x00091001, Vr.LO, "PRIVATE-MARK");
    return data;
  }

  private static Marked at(Marked mark, int level) {
    return new Marked(mark.tag(), mark.vr(), mark.number() + 1000 * level);
  }

  private static List<String> texts(Element element) {
    List<String> texts = new ArrayList<>(element.strings());
    element.items().forEach(item -> item.forEach(inside -> texts.addAll(texts(inside))));
    texts.add(new String(element.toByteArray(), StandardCharsets.ISO_8859_1));
    return texts;
  }

  /** The finished file as Latin-1 text; read back, so that it is a file. */
  private static String written(DataSet copy) {
    DataSet whole =
        copy.copy()
            .put(Tags.SOPClassUID, "1.2.840.10008.5.1.4.1.1.77.1.4")
            .put(Tags.SOPInstanceUID, "2.25.77");
    byte[] file = Part10Writer.write(whole, TransferSyntax.EXPLICIT_LITTLE_ENDIAN).orThrow();
    Part10Reader.read(file).orThrow();
    return new String(file, StandardCharsets.ISO_8859_1);
  }

  private static List<Row> table() throws IOException {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    MarkedAttributesTest.class.getResourceAsStream("profile.csv")),
                StandardCharsets.UTF_8))) {
      List<String> lines = reader.lines().skip(1).toList();
      String[] columns = lines.get(0).split(",", -1);
      List<Row> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] values = line.split(",", -1);
        Map<String, String> fields = new java.util.HashMap<>();
        for (int i = 0; i < columns.length; i++) {
          fields.put(columns[i], values[i]);
        }
        rows.add(new Row(Marked.of(values[0], values[2], rows.size()), fields));
      }
      return rows;
    }
  }
}
