package org.vestibule.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.ExternalTool;
import org.vestibule.assign.Crop;
import org.vestibule.assign.Decision;
import org.vestibule.check.PhotographicChecker;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;

/** An object says by itself what it shows. Read by pydicom and dcmdump, not by our own reader. */
class ShownViewTest {

  private static final byte[] PICTURE =
      PhoneJpeg.builder(SampleRoll.picture(Scene.UPPER_OCCLUSAL, 96, 64)).bytes();

  private static final Encoder ENCODER = new Encoder(CameraFacts.standard());

  /** For each file: code/scheme of the view, its modifiers, the structures, and flat values. */
  private static final String READER =
      """
      import pydicom, sys
      def code(i):
          v = i.CodeValue if 'CodeValue' in i else i.LongCodeValue
          return v + ' ' + i.CodingSchemeDesignator
      for path in sys.argv[1:]:
          d = pydicom.dcmread(path)
          v = d.ViewCodeSequence[0]
          m = v.get('ViewModifierCodeSequence', [])
          own = [i for i in [v, *m] if i.CodingSchemeDesignator.startswith('99VESTIBULE')]
          s = d.get('PrimaryAnatomicStructureSequence', [])
          print('|'.join([
              code(v),
              ', '.join(code(i) for i in m),
              '; '.join(' + '.join(code(c) for c in
                  [i, *i.get('PrimaryAnatomicStructureModifierSequence', [])]) for i in s),
              d.ImageLaterality,
              d.get('RecognizableVisualFeatures', '-'),
              ' '.join(i.CodeMeaning for i in own),
              ' '.join(i.ContextGroupExtensionFlag + i.ContextIdentifier for i in own),
              ', '.join(i.CodingSchemeDesignator for i in d.CodingSchemeIdentificationSequence),
              d.ImageComments]))
      """;

  @TempDir private Path folder;

  private record Read(
      String view,
      String modifiers,
      String structures,
      String laterality,
      String face,
      String name,
      String extension,
      String schemes,
      String comments) {}

  @Test
  void everyViewOfTheCatalogueStandsInItsObjectByKeyAndName() throws Exception {
    Map<View, Path> files = new LinkedHashMap<>();
    for (View view : ViewCatalogue.standard().all()) {
      byte[] object = one(view.key(), "", usual(view), view.occlusal() ? Incisors.TOP : null, null);
      assertThat(PhotographicChecker.check(object)).as(view.key()).isEmpty();
      files.put(view, Files.write(folder.resolve(view.key() + ".dcm"), object));
    }
    List<Read> read = read(List.copyOf(files.values()));
    int at = 0;
    for (View view : files.keySet()) {
      Read object = read.get(at++);
      String own = view.key() + " 99VESTIBULE";
      boolean standard = view.view() != null;
      assertThat(object.view()).isEqualTo(standard ? view.view().value() + " SCT" : own);
      assertThat(object.modifiers().contains(own)).as(view.key()).isEqualTo(standard);
      assertThat(object.modifiers().contains("787610003 SCT"))
          .as(view.key())
          .isEqualTo(usual(view) == Mirror.AS_SHOT);
      assertThat(object.name()).isEqualTo(view.name());
      assertThat(object.extension()).isEqualTo(standard ? "Y4065" : "Y4063");
      assertThat(object.schemes()).isEqualTo("99VESTIBULE");
      assertThat(object.comments()).startsWith("View: " + view.name() + ".");
      assertThat(object.comments().contains("Was a mirror image, shown corrected."))
          .isEqualTo(usual(view) == Mirror.AS_SHOT);
    }
  }

  /** dciodvfy (dicom3tools) and dcmdump (DCMTK) as two more readers. */
  @ParameterizedTest
  @CsvSource({"palatal-front, AS_SHOT,", "lesion-palate-close-up, AS_SHOT, TOP", "frontal, NONE,"})
  void otherReadersFindNoFault(String view, Mirror mirror, Incisors incisors) throws Exception {
    ExternalTool validator = ExternalTool.require("dciodvfy", "dicom3tools");
    ExternalTool dump = ExternalTool.require("dcmdump", "dcmtk");
    byte[] object = one(view, "upper right quadrant", mirror, incisors, null);
    Path file = Files.write(folder.resolve("one.dcm"), object);
    assertThat(validator.run(file.toString()).errors()).doesNotContain("Error");
    ExternalTool.Result dumped = dump.run(file.toString());
    assertThat(dumped.exitCode()).isZero();
    assertThat(dumped.errors()).isEmpty();
    assertThat(dumped.text()).contains("[99VESTIBULE]").contains("[" + view + "]");
  }

  /** Two practices may use one key for two views: theirs is another scheme than the program's. */
  @Test
  void aPracticesOwnViewIsOfASchemeOfItsOwn() throws Exception {
    String row =
        "key,name,words,permanent,mixed,deciduous,region,structure,view,modifiers,shown,"
            + "shown_incisors_up,looking,usual,series,arch,side,occlusal,face\n"
            + "inside-of-the-cheek,Cheek \\ inside,inside,,,,123851003,,,,P\\F,,R,direct,,,right,no,no\n";
    View view =
        ViewCatalogue.standard().with(new StringReader(row)).orThrow().find("inside").orThrow();
    Decision like = Filed.decision("frontal", "", Mirror.NONE, null, null);
    Decision decision =
        new Decision(
            like.visit(),
            view,
            like.teeth(),
            like.mirror(),
            null,
            null,
            true,
            null,
            List.of(),
            null,
            "",
            "",
            false,
            false,
            like.decidedBy(),
            List.of());
    byte[] object =
        ENCODER.encode(PICTURE, Filed.request(decision, 1)).orThrow().get(0).toByteArray();
    assertThat(PhotographicChecker.check(object)).isEmpty();
    Read read = read(List.of(Files.write(folder.resolve("own.dcm"), object))).get(0);
    assertThat(read.view()).isEqualTo("inside-of-the-cheek 99VESTIBULE-OWN");
    assertThat(read.name()).isEqualTo("Cheek   inside");
    assertThat(read.extension()).isEqualTo("Y4063");
    assertThat(read.schemes()).isEqualTo("99VESTIBULE, 99VESTIBULE-OWN");
  }

  /**
   * A face that was stored mirrored: CID 4065 speaks of intraoral pictures, so the code is ours.
   */
  @Test
  void aMirroredFaceSaysSoAndNamesNoIntraoralMirror() throws Exception {
    EncodeRequest request =
        Filed.request(Filed.decision("face-smile", "", Mirror.CORRECTED, null, null), 1);
    byte[] object = ENCODER.encode(PICTURE, request).orThrow().get(0).toByteArray();
    assertThat(PhotographicChecker.check(object)).isEmpty();
    Read read = read(List.of(Files.write(folder.resolve("face.dcm"), object))).get(0);
    assertThat(read.modifiers()).startsWith("mirror-corrected 99VESTIBULE, face-smile");
    assertThat(read.comments()).contains("Was a mirror image, shown corrected.");
    assertThat(read.face()).isEqualTo("YES");
    assertThat(new String(object, StandardCharsets.ISO_8859_1)).doesNotContain("1332162007");
  }

  /** CID 4061 and CID 2: an arch, its side, and front or back. */
  @ParameterizedTest
  @CsvSource({
    "upper-occlusal, upper right quadrant, 39481002 SCT; 39481002 SCT + 24028007 SCT",
    "upper-occlusal, upper arch, 39481002 SCT",
    "frontal, whole mouth, 74262004 SCT",
    "frontal, lower left sextant, 88176008 SCT + 7771000 SCT + 255551008 SCT",
    "frontal, upper front sextant, 39481002 SCT + 255549009 SCT",
    "lower-right-occlusal, 46, 88176008 SCT + 24028007 SCT; 866005003 SCT",
    "upper-tooth-occlusal, '', 39481002 SCT",
    "oblique-anterior-right, 21, 424399000 SCT"
  })
  void areasAndTeethThatAPersonNamedAreRecorded(String view, String teeth, String structures)
      throws Exception {
    boolean occlusal = ViewCatalogue.standard().byKey(view).orElseThrow().occlusal();
    Mirror mirror = occlusal ? Mirror.AS_SHOT : Mirror.NONE;
    byte[] object = one(view, teeth, mirror, occlusal ? Incisors.TOP : null, null);
    assertThat(PhotographicChecker.check(object)).isEmpty();
    Read read = read(List.of(Files.write(folder.resolve("a.dcm"), object))).get(0);
    assertThat(read.structures()).isEqualTo(structures);
    if (!teeth.matches("\\d*")) {
      assertThat(read.comments()).contains(" Area: " + teeth + ".");
    }
    assertThat(read.laterality()).isEqualTo(view.equals("lower-right-occlusal") ? "R" : "U");
  }

  @Test
  void aFrameKeptBesideItsCropSaysThatItMustBeHeldBack() throws Exception {
    Crop crop = new Crop(0.2, 0.2, 0.8, 0.8);
    List<Path> files = new ArrayList<>();
    for (EncodedObject object : objects("frontal", "", Mirror.NONE, null, crop)) {
      assertThat(PhotographicChecker.check(object.toByteArray())).isEmpty();
      files.add(Files.write(folder.resolve(object.role() + ".dcm"), object.toByteArray()));
    }
    files.add(
        Files.write(folder.resolve("alone.dcm"), one("frontal", "", Mirror.NONE, null, null)));
    List<Read> read = read(files);
    assertThat(read).extracting(Read::face).containsExactly("YES", "-", "-");
    assertThat(read.get(0).comments())
        .contains("Whole frame kept beside its crop")
        .contains("hold");
    assertThat(read.get(1).comments()).doesNotContain("Whole frame");
    assertThat(read.get(2).comments()).doesNotContain("Whole frame");
  }

  private static Mirror usual(View view) {
    return view.usualMirror() == Mirror.NONE ? Mirror.NONE : Mirror.AS_SHOT;
  }

  private static byte[] one(
      String view, String teeth, Mirror mirror, @Nullable Incisors incisors, @Nullable Crop crop) {
    return objects(view, teeth, mirror, incisors, crop).get(0).toByteArray();
  }

  private static List<EncodedObject> objects(
      String view, String teeth, Mirror mirror, @Nullable Incisors incisors, @Nullable Crop crop) {
    return ENCODER
        .encode(PICTURE, Filed.request(Filed.decision(view, teeth, mirror, incisors, crop), 1))
        .orThrow();
  }

  private static List<Read> read(List<Path> files) throws IOException, InterruptedException {
    ExternalTool python = ExternalTool.require("python3", "python3-pydicom");
    List<String> arguments = new ArrayList<>(List.of("-c", READER));
    files.forEach(file -> arguments.add(file.toString()));
    ExternalTool.Result result = python.run(arguments.toArray(String[]::new));
    assertThat(result.errors()).isEmpty();
    return new String(result.output(), StandardCharsets.UTF_8)
        .lines()
        .map(line -> line.split("\\|", -1))
        .map(f -> new Read(f[0], f[1], f[2], f[3], f[4], f[5], f[6], f[7], f[8]))
        .toList();
  }
}
