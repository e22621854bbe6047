package org.vestibule.deid;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.ExternalTool;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.check.Finding;
import org.vestibule.check.PhotographicChecker;
import org.vestibule.check.SamplePhotograph;
import org.vestibule.check.Severity;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/** Whole files of an invented patient, and what is left of them. */
class FinishedFileTest {

  private static final Attestation NO_TEXT =
      new Attestation(ProfileOption.CLEAN_PIXEL_DATA, "Orla Tallgrass", LocalDate.of(2026, 3, 12));
  private static final Attestation NO_FACE =
      new Attestation(
          ProfileOption.CLEAN_RECOGNIZABLE_VISUAL_FEATURES,
          "Orla Tallgrass",
          LocalDate.of(2026, 3, 12));

  private static final Substitutes SUBSTITUTES =
      new Substitutes(
          "R-7Q2",
          uid -> "2.25.9" + Integer.toUnsignedString(uid.hashCode()),
          -41,
          true,
          text -> Optional.of(text).filter("Dental photographs"::equals));

  /** PS3.15 Table E.1-1, edition 2024b: X, and C under Clean Descriptors; UIDs are never clean. */
  @Test
  void anOrdersStudyUidDoesNotSurviveInACleanedItem() {
    DataSet request =
        new DataSet()
            .put(Tags.StudyInstanceUID, "2.25.4711")
            .put(Tags.RequestedProcedureDescription, "Dental photographs");
    assertThat(new Cleaning(SUBSTITUTES).item(request)).isEmpty();
    assertThat(new Cleaning(SUBSTITUTES).item(request.copy().remove(Tags.StudyInstanceUID)))
        .isPresent();
  }

  @Test
  void theBasicProfileLeavesAConformingObjectWithoutTheIdentity() {
    byte[] original = full();
    byte[] copy = copy(original, Confidentiality.BASIC);

    assertThat(errors(original)).allMatch(words -> words.contains("PixelData"));
    assertThat(errors(copy)).isEmpty();
    DataSet data = read(copy).data();
    assertThat(data.string(Tags.PatientName)).contains("R-7Q2^");
    assertThat(data.string(Tags.PatientID)).contains("R-7Q2");
    for (int emptied :
        new int[] {
          Tags.PatientBirthDate,
          Tags.PatientSex,
          Tags.StudyDate,
          Tags.StudyTime,
          Tags.StudyID,
          Tags.AccessionNumber,
          Tags.ReferringPhysicianName,
          Tags.AcquisitionContextSequence
        }) {
      assertThat(data.element(emptied).orElseThrow().isEmpty()).as(Tags.text(emptied)).isTrue();
    }
    for (int removed :
        new int[] {
          Tags.TimezoneOffsetFromUTC,
          Tags.InstanceCreationDate,
          Tags.AcquisitionDateTime,
          Tags.StationName,
          Tags.InstitutionName,
          Tags.OperatorsName,
          Tags.OperatorIdentificationSequence,
          Tags.InstitutionCodeSequence
        }) {
      assertThat(data.contains(removed)).as(Tags.text(removed)).isFalse();
    }
    assertThat(data.items(Tags.PrimaryAnatomicStructureSequence))
        .isEqualTo(SamplePhotograph.data().items(Tags.PrimaryAnatomicStructureSequence));
    String bytes = new String(copy, StandardCharsets.UTF_8);
    for (String gone :
        List.of("Müster", "P-0001", "1980", "2026", "Beispiel", "HIDDEN", "2.25.314159265358979")) {
      assertThat(bytes.contains(gone)).as(gone).isFalse();
    }
  }

  /** The codes of CID 7050 (PS3.16 edition 2026b). */
  @Test
  void theCodesSayWhatWasDoneAndNothingElse() {
    DataSet basic = read(copy(full(), Confidentiality.BASIC)).data();
    assertThat(codes(basic)).containsExactly("113100 Basic Application Confidentiality Profile");
    assertThat(basic.string(Tags.PatientIdentityRemoved)).contains("YES");
    assertThat(basic.string(Tags.LongitudinalTemporalInformationModified)).contains("REMOVED");

    EnumSet<ProfileOption> all = EnumSet.allOf(ProfileOption.class);
    all.remove(ProfileOption.RETAIN_FULL_DATES);
    DataSet most = read(copy(full(), profile(all))).data();
    assertThat(codes(most))
        .containsExactly(
            "113100 Basic Application Confidentiality Profile",
            "113101 Clean Pixel Data Option",
            "113102 Clean Recognizable Visual Features Option",
            "113104 Clean Structured Content Option",
            "113105 Clean Descriptors Option",
            "113107 Retain Longitudinal Temporal Information Modified Dates Option",
            "113108 Retain Patient Characteristics Option",
            "113109 Retain Device Identity Option",
            "113110 Retain UIDs Option",
            "113112 Retain Institution Identity Option");
    assertThat(most.string(Tags.LongitudinalTemporalInformationModified)).contains("MODIFIED");
    assertThat(codes(read(copy(full(), profile(Set.of(ProfileOption.RETAIN_FULL_DATES)))).data()))
        .containsExactly(
            "113100 Basic Application Confidentiality Profile",
            "113106 Retain Longitudinal Temporal Information Full Dates Option");
  }

  @ParameterizedTest
  @EnumSource(ProfileOption.class)
  void eachOptionLeavesAConformingObject(ProfileOption option) {
    assertThat(errors(copy(full(), profile(Set.of(option))))).isEmpty();
  }

  @Test
  void flagsOfThePictureAreAPersonsWord() {
    byte[] unsaid =
        SamplePhotograph.file(
            SamplePhotograph.data()
                .put(Tags.BurnedInAnnotation, "YES")
                .put(Tags.RecognizableVisualFeatures, "YES"));
    DataSet basic = read(copy(unsaid, Confidentiality.BASIC)).data();
    assertThat(basic.string(Tags.BurnedInAnnotation)).contains("YES");
    assertThat(basic.string(Tags.RecognizableVisualFeatures)).contains("YES");

    DataSet said =
        read(copy(
                unsaid,
                profile(
                    Set.of(
                        ProfileOption.CLEAN_PIXEL_DATA,
                        ProfileOption.CLEAN_RECOGNIZABLE_VISUAL_FEATURES))))
            .data();
    assertThat(said.string(Tags.BurnedInAnnotation)).contains("NO");
    assertThat(said.string(Tags.RecognizableVisualFeatures)).contains("NO");

    assertThat(Confidentiality.of(Set.of(ProfileOption.CLEAN_PIXEL_DATA), List.of(NO_FACE)))
        .isEqualTo(
            new Refused<>(
                "the option \"clean pixel data\" says what is in the picture, and nobody looked",
                "have a person look at each picture and give that person's name"));
  }

  @Test
  void datesCanNotBeKeptInFullAndModified() {
    Outcome<Confidentiality> both =
        Confidentiality.of(
            Set.of(ProfileOption.RETAIN_FULL_DATES, ProfileOption.RETAIN_MODIFIED_DATES),
            List.of());
    assertThat(both)
        .isEqualTo(
            new Refused<>(
                "dates can't be kept both in full and modified", "choose one of the two options"));
  }

  /** 41 days before 2026-03-05 is 2026-01-23, by the calendar. */
  @Test
  void movedDatesKeepTheirIntervalsAndLoseTheOffset() {
    DataSet moved = read(copy(full(), profile(Set.of(ProfileOption.RETAIN_MODIFIED_DATES)))).data();
    assertThat(moved.string(Tags.StudyDate)).contains("20260123");
    assertThat(moved.string(Tags.StudyTime)).contains("090000");
    assertThat(moved.string(Tags.AcquisitionDateTime)).contains("20260123090705.25");
    assertThat(moved.string(Tags.PatientBirthDate)).isEmpty();
    assertThat(moved.contains(Tags.TimezoneOffsetFromUTC)).isFalse();
  }

  /** The version of a context group is public: moved, it would give the days away. */
  @Test
  void aDateThatAnybodyKnowsIsNotMoved() {
    DataSet view =
        SamplePhotograph.data()
            .item(Tags.ViewCodeSequence)
            .orElseThrow()
            .put(Tags.ContextGroupVersion, "20250330");
    byte[] file = SamplePhotograph.file(SamplePhotograph.data().put(Tags.ViewCodeSequence, view));
    DataSet moved = read(copy(file, profile(Set.of(ProfileOption.RETAIN_MODIFIED_DATES)))).data();
    assertThat(moved.item(Tags.ViewCodeSequence).orElseThrow().string(Tags.ContextGroupVersion))
        .contains("19000101000000");
  }

  @Test
  void aTextStaysOnlyIfItIsKnownToIdentifyNobody() {
    DataSet data =
        SamplePhotograph.data()
            .put(Tags.StudyDescription, "Dental photographs")
            .put(Tags.SeriesDescription, "for Dr Beispiel");
    Confidentiality clean = profile(Set.of(ProfileOption.CLEAN_DESCRIPTORS));
    DataSet copy = Deidentifier.deidentify(data, clean, SUBSTITUTES);
    assertThat(copy.string(Tags.StudyDescription)).contains("Dental photographs");
    assertThat(copy.contains(Tags.SeriesDescription)).isFalse();
    assertThat(
            Deidentifier.deidentify(data, Confidentiality.BASIC, SUBSTITUTES)
                .contains(Tags.StudyDescription))
        .isFalse();
  }

  @Test
  void aNarrowCopyNamesThePatientAndCarriesNoCodeOfTheProfile() {
    byte[] copy =
        Deidentifier.narrow(
                full(), Set.of(Tags.PatientName, Tags.PatientID, Tags.StudyDate), SUBSTITUTES)
            .orThrow();
    assertThat(errors(copy)).isEmpty();
    DataSet data = read(copy).data();
    assertThat(data.string(Tags.PatientName)).contains("Müster^Änne");
    assertThat(data.string(Tags.StudyDate)).contains("20260305");
    assertThat(data.string(Tags.PatientBirthDate)).isEmpty();
    assertThat(data.string(Tags.PatientIdentityRemoved)).contains("NO");
    assertThat(data.contains(Tags.DeidentificationMethodCodeSequence)).isFalse();
    assertThat(new String(copy, StandardCharsets.UTF_8).contains("HIDDEN")).isFalse();
  }

  @Test
  void theHeaderIsTheProgramsOwn() {
    byte[] spoilt = full();
    System.arraycopy("HIDDEN IN FRONT".getBytes(StandardCharsets.US_ASCII), 0, spoilt, 3, 15);
    DicomFile copy = read(copy(spoilt, Confidentiality.BASIC));
    assertThat(copy.preamble()).containsOnly(0);
    assertThat(copy.meta().string(Tags.MediaStorageSOPInstanceUID))
        .isEqualTo(copy.data().string(Tags.SOPInstanceUID))
        .contains(SUBSTITUTES.uids().substitute("2.25.314159265358979"));
  }

  @Test
  void theSameObjectGivesTheSameBytes() {
    assertThat(copy(full(), Confidentiality.BASIC)).isEqualTo(copy(full(), Confidentiality.BASIC));
  }

  /** dciodvfy (dicom3tools), dcmdump (DCMTK) and exiftool as independent readers. */
  @Test
  void otherProgramsReadItAndFindNothing(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("copy.dcm");
    Files.write(file, copy(full(), Confidentiality.BASIC));
    ExternalTool.Result verified =
        ExternalTool.require("dciodvfy", "dicom3tools").run(file.toString());
    assertThat(verified.exitCode()).as(verified.errors()).isZero();
    assertThat(verified.errors()).contains("VLPhotographicImage").doesNotContain("Error");
    ExternalTool.Result dumped =
        ExternalTool.require("dcmdump", "dcmtk").run("+L", file.toString());
    assertThat(dumped.exitCode()).isZero();
    assertThat(dumped.text())
        .contains("113100")
        .doesNotContain("P-0001", "HIDDEN", "1980", "Beispiel");
    ExternalTool.Result exif =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run("-a", "-u", "-ee", "-G1", file.toString());
    assertThat(exif.text()).doesNotContain("P-0001", "HIDDEN", "1980", "Beispiel", "GPS");
  }

  /** pydicom walks every element, nested ones too. */
  @Test
  void anotherReaderFindsNoPrivateElementAndNoOldUid(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("copy.dcm");
    Files.write(file, copy(full(), Confidentiality.BASIC));
    String script =
        "import sys,pydicom\n"
            + "d=pydicom.dcmread(sys.argv[1])\n"
            + "print(sum(e.tag.is_private for e in d.iterall()))\n"
            + "print(sum(str(e.value).startswith('2.25.3141') for e in d.iterall()))\n"
            + "print(d.PatientIdentityRemoved, [c.CodeValue for c in"
            + " d.DeidentificationMethodCodeSequence])\n"
            + "print((d.Rows, d.Columns))\n";
    ExternalTool.Result said =
        ExternalTool.require("python3", "python3-pydicom").run("-c", script, file.toString());
    assertThat(said.exitCode()).as(said.errors()).isZero();
    assertThat(said.text()).isEqualTo("0\n0\nYES ['113100']\n(48, 64)\n");
  }

  private static Confidentiality profile(Set<ProfileOption> options) {
    return Confidentiality.of(options, List.of(NO_TEXT, NO_FACE)).orThrow();
  }

  private static byte[] copy(byte[] file, Confidentiality profile) {
    return Deidentifier.deidentify(file, profile, SUBSTITUTES).orThrow();
  }

  private static DicomFile read(byte[] file) {
    return Part10Reader.read(file).orThrow();
  }

  private static List<String> errors(byte[] file) {
    return PhotographicChecker.check(file).stream()
        .filter(finding -> finding.severity() == Severity.ERROR)
        .map(Finding::words)
        .collect(Collectors.toList());
  }

  private static List<String> codes(DataSet data) {
    return data.items(Tags.DeidentificationMethodCodeSequence).stream()
        .map(
            item ->
                item.string(Tags.CodeValue).orElseThrow()
                    + " "
                    + item.string(Tags.CodeMeaning).orElseThrow())
        .toList();
  }

  /** A photograph with much that may stand in one: persons, places, devices, private elements. */
  private static byte[] full() {
    DataSet person =
        new DataSet()
            .put(
                Tags.PersonIdentificationCodeSequence,
                SamplePhotograph.code("99HIDDEN", "HIDDEN-1", "HIDDEN person"))
            .put(Tags.InstitutionName, "HIDDEN practice");
    DataSet data =
        SamplePhotograph.data()
            .put(Tags.InstitutionName, "HIDDEN practice")
            .put(Tags.InstitutionAddress, "HIDDEN street")
            .put(Tags.StationName, "HIDDEN")
            .put(Tags.DeviceSerialNumber, "HIDDEN-77")
            .put(Tags.OperatorsName, "HIDDEN^Op")
            .put(Tags.OperatorIdentificationSequence, person)
            .put(
                Tags.InstitutionCodeSequence,
                SamplePhotograph.code("99HIDDEN", "HIDDEN-2", "HIDDEN practice"))
            .put(Tags.ImageComments, "HIDDEN words about Müster")
            .put(Tags.PatientComments, "HIDDEN")
            .put(Tags.InstanceCreationDate, "20260305")
            .put(Tags.PatientAge, "046Y")
            .put(
                Tags.ContributingEquipmentSequence,
                new DataSet()
                    .put(
                        Tags.PurposeOfReferenceCodeSequence,
                        SamplePhotograph.code("DCM", "109103", "Modifying Equipment"))
                    .put(Tags.Manufacturer, "Example")
                    .put(Tags.InstitutionName, "HIDDEN practice")
                    .put(Tags.StationName, "HIDDEN")
                    .put(Tags.DeviceSerialNumber, "HIDDEN-78"))
            .put(0x00090010, Vr.LO, "HIDDEN MAKER")
            .put(0x00091001, Vr.LO, "HIDDEN");
    data.putFragments(Tags.PixelData, withExif(SamplePhotograph.jpeg()));
    return SamplePhotograph.file(data);
  }

  /** The picture with an Exif segment and a comment behind SOI, and words after EOI. */
  private static byte[] withExif(byte[] jpeg) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    segment(out, 0xE1, "Exif\0\0II*\0HIDDEN GPS");
    segment(out, 0xFE, "HIDDEN comment");
    out.write(jpeg, 2, jpeg.length - 2);
    out.writeBytes("HIDDEN trailer".getBytes(StandardCharsets.US_ASCII));
    return out.toByteArray();
  }

  private static void segment(ByteArrayOutputStream out, int marker, String content) {
    byte[] bytes = content.getBytes(StandardCharsets.ISO_8859_1);
    out.write(0xFF);
    out.write(marker);
    out.write((bytes.length + 2) >> 8);
    out.write((bytes.length + 2) & 0xFF);
    out.writeBytes(bytes);
  }
}
