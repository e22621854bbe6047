package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.check.CheckReport;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.intake.Traces;
import org.vestibule.release.LeakSearch;
import org.vestibule.release.Secrets;
import org.vestibule.samples.SampleFolder;

/** The sample roll, taken in by a site whose objects say nothing of the patients' identity. */
class DoorRollTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);
  private static final String SITE = "School at the Crooked Lantern";

  /** Where the coded picture begins: the head of Pixel Data (PS3.5 A.4). */
  private static final byte[] PIXELS = {(byte) 0xE0, 0x7F, 0x10, 0, 'O', 'B'};

  @TempDir private static Path home;

  private static IngestReport report;

  @BeforeAll
  static void ingest() throws IOException {
    SampleFolder.layOut(home);
    try (Practice practice = open(home, Identity.DATES_MOVED)) {
      report = run(practice);
    }
  }

  @Test
  void filesAndKeepsWaitingWhatThePlanExpects() throws IOException {
    PlannedFate.holds(report);
  }

  /** All that the visit list, the files and the practice say, in every object's bytes and name. */
  @Test
  void noObjectHoldsWhatIdentifiesAnybody() throws IOException {
    Set<String> known = new LinkedHashSet<>(List.of(SITE, "school-7", "CROOKED-LANTERN"));
    Set<LocalDate> days = new HashSet<>();
    for (String line : Files.readAllLines(SampleFolder.visits()).stream().skip(1).toList()) {
      for (String cell : line.split(",", -1)) {
        known.addAll(List.of(cell.split("\\^", -1)));
      }
      days.add(LocalDate.parse(line.split(",", -1)[4]));
    }
    for (Path file : files(home.resolve("inbox"))) {
      known.add(file.getFileName().toString());
      byte[] bytes = Files.readAllBytes(file);
      known.addAll(Traces.of(bytes).texts());
    }
    days.add(LocalDate.of(2026, 3, 12));
    days.add(LocalDate.of(2026, 3, 13));
    known.removeIf(word -> word.isBlank() || List.of("F", "M", "Dr").contains(word));
    assertThat(known).contains("Quillfeather", "CL-0417", "A-26-0312-01", "IMG_0002.JPG");
    LeakSearch search = new LeakSearch(new Secrets(known, days));
    for (Path object : files(home.resolve("objects"))) {
      byte[] bytes = Files.readAllBytes(object);
      assertThat(search.find("object.dcm", bytes)).as(object.toString()).isEmpty();
      byte[] head = beforePixels(bytes);
      String name = home.relativize(object).toString();
      for (String word : known) {
        assertThat(name).doesNotContain(word);
        assertThat(occurs(head, word)).as(word).isFalse();
      }
      for (LocalDate day : days) {
        for (String form : List.of("uuuuMMdd", "uuuu-MM-dd", "uuuu:MM:dd", "dd.MM.uuuu")) {
          String word = DateTimeFormatter.ofPattern(form, Locale.ROOT).format(day);
          assertThat(occurs(head, word)).as(word).isFalse();
        }
      }
    }
  }

  /** The search above is none that finds nothing anywhere. */
  @Test
  void theSameSearchFindsThePatientInAClinicalRecord(@TempDir Path other) throws IOException {
    Path inbox = Files.createDirectories(other.resolve("inbox"));
    Files.copy(SampleFolder.roll().resolve("IMG_0002.JPG"), inbox.resolve("IMG_0002.JPG"));
    Files.copy(SampleFolder.manifest(), inbox.resolve("manifest.csv"));
    Files.copy(SampleFolder.visits(), other.resolve("visits.csv"));
    try (Practice practice = open(other, Identity.KEPT)) {
      assertThat(run(practice).filed()).hasSize(1);
    }
    byte[] object = Files.readAllBytes(files(other.resolve("objects")).get(0));
    assertThat(new LeakSearch(new Secrets(Set.of("Quillfeather"), Set.of())).find("a.dcm", object))
        .isPresent();
    assertThat(occurs(beforePixels(object), "Quillfeather")).isTrue();
    assertThat(occurs(beforePixels(object), "20260312")).isTrue();
  }

  /** PS3.15 E.1 to E.3, CID 7050: exactly the codes of what was done. */
  @Test
  void everyObjectConformsAndSaysWhatWasDone() throws Exception {
    List<Path> objects = files(home.resolve("objects"));
    assertThat(objects).hasSizeGreaterThan(report.filed().size());
    for (Path file : objects) {
      byte[] bytes = Files.readAllBytes(file);
      assertThat(CheckReport.of("object", bytes).errors()).as(file.toString()).isZero();
      DataSet object = Part10Reader.read(bytes).orThrow().data();
      assertThat(object.string(Tags.PatientIdentityRemoved)).contains("YES");
      assertThat(object.items(Tags.DeidentificationMethodCodeSequence))
          .extracting(item -> item.string(Tags.CodeValue).orElse(""))
          .containsExactly("113100", "113105", "113107");
      assertThat(object.string(Tags.LongitudinalTemporalInformationModified)).contains("MODIFIED");
      assertThat(object.string(Tags.PatientID).orElse("")).matches("R-[0-9A-Z]{12}");
      for (int tag :
          List.of(
              Tags.PatientBirthDate,
              Tags.PatientSex,
              Tags.AccessionNumber,
              Tags.ReferringPhysicianName,
              Tags.StudyID,
              Tags.StudyTime)) {
        assertThat(object.string(tag).orElse("")).as(Tags.text(tag)).isEmpty();
        assertThat(object.contains(tag)).as("type 2: " + Tags.text(tag)).isTrue();
      }
      for (int tag :
          List.of(
              Tags.InstitutionName,
              Tags.PerformingPhysicianName,
              Tags.IssuerOfPatientID,
              Tags.TimezoneOffsetFromUTC,
              Tags.LensModel,
              Tags.SourceImageSequence)) {
        assertThat(object.contains(tag)).as(Tags.text(tag)).isFalse();
      }
      assertThat(ExternalTool.require("dciodvfy", "dicom3tools").run(file.toString()).errors())
          .doesNotContain("Error");
    }
  }

  @Test
  void textsOfTheProgramStayAndThoseOfPeopleGo() throws IOException {
    List<String> comments = new ArrayList<>();
    for (DataSet object : objects()) {
      object.string(Tags.ImageComments).ifPresent(comments::add);
      assertThat(object.string(Tags.SeriesDescription).orElse(""))
          .startsWith("Photographs of the ");
    }
    assertThat(comments)
        .anyMatch(text -> text.contains("Stage: before."))
        .anyMatch(text -> text.contains("hold it back"))
        .noneMatch(text -> text.contains("Note") || text.contains("Treatment"))
        .noneMatch(text -> text.contains("crowded") || text.contains("filling"));
  }

  @Test
  void onePatientHasOnePseudonymAndDatesKeepTheirDistances() throws IOException {
    Map<String, String> pseudonyms = new TreeMap<>();
    Map<String, Long> shifts = new TreeMap<>();
    try (Practice practice = open(home, Identity.DATES_MOVED)) {
      for (FiledPhoto photo : report.filed()) {
        DataSet object = new KeptPhoto(practice).object(photo.id()).orThrow();
        DecisionRecord decided =
            CurrentDecision.of(TestHome.hash(practice, photo.id()), practice.store().ledger())
                .orElseThrow();
        String pseudonym = object.string(Tags.PatientID).orElseThrow();
        assertThat(pseudonyms.computeIfAbsent(decided.patientId(), any -> pseudonym))
            .isEqualTo(pseudonym);
        LocalDate trueDay = LocalDate.parse(decided.start().substring(0, 10));
        long shift = ChronoUnit.DAYS.between(trueDay, object.date(Tags.StudyDate).orElseThrow());
        assertThat(shift).isBetween(-1826L, -1L);
        assertThat(shifts.computeIfAbsent(pseudonym, any -> shift)).isEqualTo(shift);
        assertThat(object.date(Tags.ContentDate).orElseThrow()).isEqualTo(trueDay.plusDays(shift));
      }
    }
    assertThat(pseudonyms).hasSize(4);
    assertThat(new HashSet<>(pseudonyms.values())).hasSize(4);
    assertThat(new HashSet<>(shifts.values())).hasSizeGreaterThan(1);
  }

  @Test
  void theSitesOwnPeopleSeeWhoItIs() throws IOException {
    try (Practice practice = open(home, Identity.DATES_MOVED)) {
      String id = id("IMG_0002.JPG");
      Map<String, String> lines = new TreeMap<>();
      for (PhotoWords.Line line : new KeptPhoto(practice).words(id).orThrow()) {
        lines.putIfAbsent(line.label(), line.value());
      }
      DataSet object = new KeptPhoto(practice).object(id).orThrow();
      assertThat(lines)
          .containsEntry("Patient", "Odalys Quillfeather")
          .containsEntry("Patient number", "CL-0417 of CROOKED-LANTERN")
          .containsEntry("Born", "1984-02-29")
          .containsEntry("Visit", "2026-03-12, V-1201")
          .containsEntry("Taken", "2026-03-12 09:06:31")
          .containsEntry("Treated by", "Dr Bettany Tinderbell")
          .containsEntry(
              "In the object",
              object.string(Tags.PatientID).orElseThrow()
                  + ", visit on "
                  + object.date(Tags.StudyDate).orElseThrow());
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  private static String id(String file) {
    return report.filed().stream()
        .filter(photo -> photo.name().equals(file))
        .findFirst()
        .orElseThrow()
        .id();
  }

  private static List<DataSet> objects() throws IOException {
    List<DataSet> objects = new ArrayList<>();
    for (Path file : files(home.resolve("objects"))) {
      objects.add(Part10Reader.read(Files.readAllBytes(file)).orThrow().data());
    }
    return objects;
  }

  private static IngestReport run(Practice practice) throws IOException {
    Path inbox = practice.settings().inbox();
    return Ingest.run(
            practice,
            new IngestRequest(inbox, inbox.resolve("manifest.csv"), "nightly job", false, false),
            Progress.NONE)
        .orThrow();
  }

  private static Practice open(Path home, Identity identity) throws IOException {
    Settings settings =
        SettingsWith.door(
            SettingsWith.site(
                Settings.defaults(home, ZoneId.of("Europe/Vienna")), "school-7", SITE),
            new DoorRules(identity, true));
    return Practice.open(home, settings, CLOCK, true).orThrow();
  }

  private static byte[] beforePixels(byte[] object) {
    for (int at = object.length - PIXELS.length; at >= 0; at--) {
      if (Arrays.equals(object, at, at + PIXELS.length, PIXELS, 0, PIXELS.length)) {
        return Arrays.copyOf(object, at);
      }
    }
    throw new AssertionError("an object has a picture");
  }

  /** True if the bytes hold this word in an encoding, whatever its case; short ones as a field. */
  private static boolean occurs(byte[] bytes, String word) {
    if (word.length() < 6) {
      return fields(Part10Reader.read(bytes).orThrow().data()).contains(word);
    }
    for (Charset charset :
        List.of(
            StandardCharsets.ISO_8859_1, StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
      String asRead = new String(bytes, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT);
      String asWritten =
          new String(word.toLowerCase(Locale.ROOT).getBytes(charset), StandardCharsets.ISO_8859_1);
      if (asRead.contains(asWritten)) {
        return true;
      }
    }
    return false;
  }

  private static Set<String> fields(DataSet data) {
    Set<String> all = new HashSet<>();
    for (Element element : data) {
      if (element.tag() != Tags.PixelData) {
        element.strings().forEach(value -> all.addAll(List.of(value.split("\\^", -1))));
        element.items().forEach(item -> all.addAll(fields(item)));
      }
    }
    return all;
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).sorted().toList();
    }
  }
}
