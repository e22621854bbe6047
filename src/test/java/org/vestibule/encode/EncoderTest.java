package org.vestibule.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.ExternalTool;
import org.vestibule.assign.Crop;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;

class EncoderTest {

  private static final byte[] UPPER =
      PhoneJpeg.builder(SampleRoll.picture(Scene.UPPER_OCCLUSAL, 320, 240))
          .position(48.2, 16.4, 170)
          .bodySerial("SN-12345")
          .owner("Owner Ownerson")
          .software("Darkroom 9")
          .makerNote("secret place".getBytes(StandardCharsets.US_ASCII))
          .comment("a comment nobody checked")
          .trailingVideo(2000)
          .bytes();

  private static final Encoder ENCODER = new Encoder(CameraFacts.standard());

  /** One character of four bytes in UTF-8 and of two units in a string. */
  private static final String SMILEY = Character.toString(0x1F600);

  private static final Crop MIDDLE = new Crop(0.1, 0.1, 0.8, 0.9);

  @TempDir private Path folder;

  /** dciodvfy (dicom3tools) as an independent reading of PS3.3. */
  @ParameterizedTest
  @CsvSource({
    "upper-occlusal, AS_SHOT, TOP",
    "lower-occlusal, AS_SHOT, BOTTOM",
    "frontal, NONE,",
    "right-buccal, AS_SHOT,",
    "left-buccal, NONE,",
    "face-smile, NONE,",
    "frontal-apart, NONE,",
    "palatal-front, AS_SHOT,",
    "shade-upper, NONE,",
    "profile-right, NONE,"
  })
  void anIndependentValidatorFindsNoError(String view, Mirror mirror, Incisors incisors)
      throws Exception {
    ExternalTool validator = ExternalTool.require("dciodvfy", "dicom3tools");
    EncodeRequest request = Filed.request(Filed.decision(view, "", mirror, incisors, MIDDLE), 1);
    for (EncodedObject object : encode(request)) {
      Path file = Files.write(folder.resolve(object.role() + ".dcm"), object.toByteArray());
      String findings = validator.run(file.toString()).errors();
      assertThat(findings).startsWith("VLPhotographicImage").doesNotContain("Error");
    }
  }

  @Test
  void theSamePhotographAndDecisionGiveTheSameFile() {
    EncodeRequest request = upper("16", MIDDLE);
    List<EncodedObject> first = encode(request);
    List<EncodedObject> second = encode(request);
    assertThat(first).extracting(EncodedObject::role).containsExactly(Role.FRAME, Role.CROP);
    assertThat(second)
        .extracting(EncodedObject::hash)
        .isEqualTo(first.stream().map(EncodedObject::hash).toList());
  }

  @Test
  void nothingPersonalOfTheFileEntersTheObject() {
    String bytes =
        new String(encode(upper("16", null)).get(0).toByteArray(), StandardCharsets.ISO_8859_1);
    assertThat(bytes)
        .contains("Lumo P1")
        .doesNotContain("SN-12345")
        .doesNotContain("Ownerson")
        .doesNotContain("Darkroom")
        .doesNotContain("secret place")
        .doesNotContain("nobody checked")
        .doesNotContain("ftyp")
        .doesNotContain("Exif")
        .doesNotContain("JFIF");
  }

  /** The allow-list names attributes that must stay out whatever the camera wrote. */
  @Test
  void attributesThatTheListKeepsOutAreAbsent() {
    DataSet object = frame(upper("16", null));
    List<String> out =
        CameraFacts.standard().lines().stream()
            .filter(line -> !line.kept() && !line.keyword().isEmpty())
            .map(CameraFacts.Line::keyword)
            .filter(keyword -> !keyword.equals("ImageComments"))
            .toList();
    assertThat(out).contains("GPSLatitude", "DeviceSerialNumber", "MakerNote");
    for (String keyword : out) {
      assertThat(object.contains(Dictionary.tag(keyword).orElseThrow())).as(keyword).isFalse();
    }
    assertThat(object.string(Tags.ImageComments).orElseThrow())
        .doesNotContain("comment nobody checked");
  }

  /** exiftool as an independent reader: a bare codestream has no metadata group but its own. */
  @Test
  void aMetadataReaderFindsNothingInTheCodestream() throws Exception {
    ExternalTool exiftool = ExternalTool.require("exiftool", "libimage-exiftool-perl");
    byte[] codestream = codestream(encode(upper("16", null)).get(0));
    Path file = Files.write(folder.resolve("codestream.jpg"), codestream);
    String listed = exiftool.run("-G", "-s", "-a", "-u", file.toString()).text();
    assertThat(listed.lines().toList())
        .isNotEmpty()
        .allMatch(
            line ->
                line.startsWith("[File]")
                    || line.startsWith("[Composite]")
                    || line.startsWith("[ExifTool]"));
    assertThat(listed).doesNotContain("Comment").doesNotContain("Warning");
  }

  @Test
  void anArchViewCodesTheArchAndOnlyNamedTeeth() {
    assertThat(structures(frame(upper("", null)))).containsExactly("39481002");
    assertThat(structures(frame(upper("16, 11", null))))
        .containsExactly("39481002", "865995000", "422653006");
  }

  @Test
  void aCorrectedMirrorImageSaysSoInsideItsViewCode() {
    DataSet view = frame(upper("16", null)).item(Tags.ViewCodeSequence).orElseThrow();
    assertThat(view.string(Tags.CodeValue)).contains("260499007");
    assertThat(
            view.item(Tags.ViewModifierCodeSequence).flatMap(item -> item.string(Tags.CodeValue)))
        .contains("787610003");
  }

  @ParameterizedTest
  @CsvSource({"right-buccal, R, 24028007", "left-buccal, L, 7771000", "frontal, U,"})
  void sideAndRegionAgree(String view, String laterality, String modifier) {
    DataSet object = frame(Filed.request(Filed.decision(view, "", Mirror.NONE, null, null), 1));
    assertThat(object.string(Tags.ImageLaterality)).contains(laterality);
    assertThat(
            object
                .item(Tags.AnatomicRegionSequence)
                .flatMap(region -> region.item(Tags.AnatomicRegionModifierSequence))
                .flatMap(item -> item.string(Tags.CodeValue))
                .orElse(null))
        .isEqualTo(modifier);
  }

  @Test
  void aCropIsDerivedAndPointsAtItsFrame() {
    List<EncodedObject> objects = encode(upper("16", MIDDLE));
    DataSet frame = dataSet(objects.get(0));
    DataSet crop = dataSet(objects.get(1));
    assertThat(frame.strings(Tags.ImageType)).containsExactly("ORIGINAL", "PRIMARY");
    assertThat(crop.strings(Tags.ImageType)).containsExactly("DERIVED", "PRIMARY");
    DataSet source = crop.item(Tags.SourceImageSequence).orElseThrow();
    assertThat(source.string(Tags.ReferencedSOPInstanceUID))
        .isEqualTo(frame.string(Tags.SOPInstanceUID));
    assertThat(crop.string(Tags.SeriesInstanceUID))
        .isNotEqualTo(frame.string(Tags.SeriesInstanceUID));
    assertThat(crop.integer(Tags.Columns).orElseThrow())
        .isLessThan(frame.integer(Tags.Columns).orElseThrow());
    assertThat(crop.string(Tags.DerivationDescription).orElseThrow())
        .startsWith("Lossless crop at block boundaries");
  }

  /**
   * Exif flash 0x49: fired, no return detection, compulsory, red-eye mode (DC-008, from memory).
   */
  @Test
  void techniqueIsKept() {
    DataSet object = frame(upper("16", null));
    assertThat(object.integer(Tags.FlashFiringStatus)).hasValue(1);
    assertThat(object.integer(Tags.FlashReturnStatus)).hasValue(0);
    assertThat(object.integer(Tags.FlashMode)).hasValue(1);
    assertThat(object.integer(Tags.FlashFunctionPresent)).hasValue(0);
    assertThat(object.integer(Tags.FlashRedEyeMode)).hasValue(1);
    assertThat(object.string(Tags.ExposureTimeInSeconds)).contains("0.008");
    assertThat(object.string(Tags.FNumber)).contains("1.8");
    assertThat(object.string(Tags.PhotographicSensitivity)).contains("64");
    assertThat(object.string(Tags.DigitalZoomRatio)).contains("1.5");
  }

  @Test
  void timesCarryTheOffsetOfThePhotograph() {
    DataSet object = frame(upper("16", null));
    assertThat(object.string(Tags.AcquisitionDateTime)).contains("20260311091233.120000+0100");
    assertThat(object.string(Tags.TimezoneOffsetFromUTC)).contains("+0100");
    assertThat(object.string(Tags.StudyDate)).contains("20260311");
    assertThat(object.contains(Tags.InstanceCreationDate)).isFalse();
  }

  @Test
  void wordsWithoutABetterPlaceStandInTheComments() {
    assertThat(frame(upper("implant 36", null)).string(Tags.ImageComments))
        .contains(
            "View: Upper occlusal. Was a mirror image, shown corrected. Stage: before. Treatment:"
                + " Onlay. At the position: implant at lower left first molar (36). Note: Grüße aus"
                + " der Mühle");
  }

  /**
   * Lengths are counted in characters, not in a program's units (PS3.5 6.2): a 4-byte character is
   * one. pydicom as an independent reader of the UTF-8.
   */
  @ParameterizedTest
  @CsvSource({"40, 40", "64, 64", "65, 64", "200, 64"})
  void aNameOfManyFourByteCharactersFitsOrIsCut(int written, int kept) throws Exception {
    EncodeRequest request = upper("16", null);
    CaptureFacts facts = CaptureFacts.builder().model(SMILEY.repeat(written)).build();
    EncodeRequest odd =
        new EncodeRequest(
            facts,
            request.decision(),
            request.laid(),
            request.sheet(),
            request.frame(),
            null,
            "",
            SMILEY.repeat(written),
            request.zone());
    ExternalTool reader = ExternalTool.require("python3", "python3-pydicom");
    Path file = Files.write(folder.resolve("odd.dcm"), encode(odd).get(0).toByteArray());
    String read =
        reader
            .run(
                "-c",
                "import pydicom,sys; d=pydicom.dcmread(sys.argv[1]);"
                    + " print([n.count(chr(0x1F600)) for n in"
                    + " (d.ManufacturerModelName, d.InstitutionName)])",
                file.toString())
            .text();
    assertThat(read.strip()).isEqualTo("[" + kept + ", " + kept + "]");
  }

  @Test
  void theProofFindsOneChangedCoefficient() {
    EncodedObject made = encode(upper("16", null)).get(0);
    byte[] onDisk = made.toByteArray();
    assertThat(ObjectProof.prove(onDisk, UPPER, made).orThrow()).isSameAs(made);
    byte[] otherPicture =
        encodeFrom(
                PhoneJpeg.builder(SampleRoll.picture(Scene.LOWER_OCCLUSAL, 320, 240)).bytes(),
                upper("16", null))
            .get(0)
            .toByteArray();
    assertThat(ObjectProof.prove(otherPicture, UPPER, made)).isInstanceOf(Refused.class);
    onDisk[onDisk.length / 2] ^= 0x10;
    assertThat(ObjectProof.prove(onDisk, UPPER, made)).isInstanceOf(Refused.class);
  }

  private static EncodeRequest upper(String teeth, Crop crop) {
    return Filed.request(
        Filed.decision("upper-occlusal", teeth, Mirror.AS_SHOT, Incisors.TOP, crop), 1);
  }

  private static List<EncodedObject> encode(EncodeRequest request) {
    return encodeFrom(UPPER, request);
  }

  private static List<EncodedObject> encodeFrom(byte[] source, EncodeRequest request) {
    return ENCODER.encode(source, request).orThrow();
  }

  private static DataSet frame(EncodeRequest request) {
    return dataSet(encode(request).get(0));
  }

  private static DataSet dataSet(EncodedObject object) {
    return Part10Reader.read(object.toByteArray()).orThrow().data();
  }

  private static byte[] codestream(EncodedObject object) {
    return Codestream.withoutPadding(dataSet(object).fragments(Tags.PixelData).get(0));
  }

  private static List<String> structures(DataSet object) {
    return object.items(Tags.PrimaryAnatomicStructureSequence).stream()
        .map(item -> item.string(Tags.CodeValue).orElseThrow().toLowerCase(Locale.ROOT))
        .toList();
  }
}
