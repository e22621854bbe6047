package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.check.PhotographicChecker;
import org.vestibule.check.Severity;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;

/** A face is cut away when copies are made, on the word of who looked. */
class ReleaseCropTest {

  private static final String WHO = "Reed, Ada";

  /** Of 167 x 135 samples in blocks of 16 x 16: columns 32 to 160 and rows 80 to 128 are whole. */
  private static final String PART = "0.13,0.5,1,1";

  @TempDir Path folder;
  private TestHome home;
  private String face;

  @BeforeEach
  void file() throws IOException {
    home = TestHome.in(folder);
    face =
        home.put(
            "smile.jpg",
            TestHome.photo(SampleRoll.picture(Scene.FACE_SMILING, 167, 135), 3)
                .orientation(1)
                .bytes());
    home.manifest("file,visit,view,mirror\nsmile.jpg,V1,face smiling,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
    for (String purpose : List.of("teaching", "referral", "insurer")) {
      Asked consent =
          Asked.by(
              WHO,
              home,
              "consent",
              "add",
              "--patient",
              "P1",
              "--purpose",
              purpose,
              "--given",
              "2026-03-12",
              "--form",
              "form 3");
      assertThat(consent.err()).isEmpty();
    }
  }

  private Asked make(String purpose, String to, String... more) {
    List<String> words = new ArrayList<>(List.of("release", "make", face, "--purpose", purpose));
    words.addAll(List.of("--for", "spring course", "--asked-by", "Finch, Bo", "--why", "lecture"));
    words.addAll(List.of("--as", "dicom,jpeg", "--to", to));
    words.addAll(List.of(more));
    return Asked.by(WHO, home, words.toArray(String[]::new));
  }

  private DataSet copy(String release) throws IOException {
    byte[] file = Files.readAllBytes(folder.resolve(release).resolve("dicom/copy-01.dcm"));
    return Part10Reader.read(file).orThrow().data();
  }

  private DataSet original() throws IOException {
    try (Stream<Path> all = Files.walk(folder.resolve("objects"))) {
      Path only = all.filter(path -> path.toString().endsWith(".dcm")).findFirst().orElseThrow();
      return Part10Reader.read(Files.readAllBytes(only)).orThrow().data();
    }
  }

  private static ExternalTool libjpeg(String program) {
    return ExternalTool.require(program, "libjpeg-turbo-progs");
  }

  /** libjpeg-turbo's jpegtran cuts the blocks by itself; dciodvfy reads the copy. */
  @Test
  void theCopyHoldsTheWholeBlocksInsideAndSaysSo() throws Exception {
    Asked made = make("teaching", "out", "--looked-by", WHO, "--crop", face + "=" + PART);
    assertThat(made.err()).isEmpty();
    DataSet copy = copy("out");
    assertThat(copy.integer(Tags.Columns)).hasValue(128);
    assertThat(copy.integer(Tags.Rows)).hasValue(48);
    byte[] theirs =
        libjpeg("jpegtran")
            .run(Codestream.of(original()).orThrow(), "-copy", "none", "-crop", "128x48+32+80")
            .output();
    byte[] pixels = libjpeg("djpeg").run(theirs, "-pnm").output();
    assertThat(pixels).hasSizeGreaterThan(128 * 48 * 3);
    assertThat(libjpeg("djpeg").run(Codestream.of(copy).orThrow(), "-pnm").output())
        .isEqualTo(pixels);
    byte[] jpeg = Files.readAllBytes(folder.resolve("out/jpeg/copy-01.jpg"));
    assertThat(libjpeg("djpeg").run(jpeg, "-pnm").output()).isEqualTo(pixels);
    assertThat(copy.string(Tags.DerivationDescription))
        .contains(
            "Privacy crop to whole blocks, nothing re-encoded: 128 x 48 samples of the source"
                + " image");
    assertThat(copy.strings(Tags.ImageType)).containsExactly("DERIVED", "PRIMARY");
    assertThat(copy.string(Tags.RecognizableVisualFeatures)).contains("NO");
    assertThat(
            copy.items(Tags.DeidentificationMethodCodeSequence).stream()
                .map(item -> item.string(Tags.CodeValue).orElseThrow()))
        .containsExactly("113100", "113101", "113102", "113105", "113107");
    Path dicom = folder.resolve("out/dicom/copy-01.dcm");
    assertThat(PhotographicChecker.check(Files.readAllBytes(dicom)))
        .noneMatch(finding -> finding.severity() == Severity.ERROR);
    assertThat(ExternalTool.require("dciodvfy", "dicom3tools").run(dicom.toString()).errors())
        .doesNotContain("Error");
    assertThat(Asked.of(home, "release", "show", "2026-001").out())
        .contains("  looked    Reed, Ada on 2026-03-14\n")
        .contains("  crop      " + face + " to " + PART + "\n");
  }

  @Test
  void namedCopiesGoWithoutTheFaceToo() throws IOException {
    for (String purpose : List.of("referral", "insurer")) {
      assertThat(make(purpose, purpose + "-whole").code()).as(purpose).isEqualTo(3);
      Asked made = make(purpose, purpose, "--looked-by", WHO, "--crop", face + "=" + PART);
      assertThat(made.err()).as(purpose).isEmpty();
      assertThat(copy(purpose).string(Tags.DerivationDescription).orElseThrow())
          .startsWith("Privacy crop");
      assertThat(copy(purpose).string(Tags.RecognizableVisualFeatures)).contains("NO");
    }
    assertThat(Asked.of(home, "release", "show", "2026-001").out()).contains("looked    Reed, Ada");
  }

  /** One UID never stands for two contents, and a crop is made again as it was. */
  @Test
  void anotherPartIsAnotherInstanceAndTheSameOneTheSame() throws IOException {
    make("teaching", "one", "--looked-by", WHO, "--crop", face + "=" + PART);
    make("teaching", "two", "--looked-by", WHO, "--crop", face + "=0.13,0.6,1,1");
    assertThat(copy("one").string(Tags.SOPInstanceUID))
        .isNotEqualTo(copy("two").string(Tags.SOPInstanceUID));
    Asked again = Asked.by(WHO, home, "release", "make", "--again", "2026-001", "--to", "again");
    assertThat(again.err()).isEmpty();
    for (String name : List.of("dicom/copy-01.dcm", "manifest.json")) {
      assertThat(Files.readAllBytes(folder.resolve("again").resolve(name)))
          .isEqualTo(Files.readAllBytes(folder.resolve("one").resolve(name)));
    }
  }

  @Test
  void whatIsNotSaidOrCantBeCutIsRefused() {
    assertRefused(
        make("referral", "out", "--crop", face + "=" + PART),
        """
        vestibule: nobody is named who looked at the part that is to be cropped and found no face in it.
          What to do: have a person look, and give the name with --looked-by.
        """);
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, "--crop", "1a2b3c4d5e=" + PART),
        """
        vestibule: a crop is said for 1a2b3c4d5e, which is not among the photographs.
          What to do: write the id as it stands among the photographs.
        """);
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, "--crop", face + "=0.9,0.5,0.1,1"),
        "vestibule: photograph "
            + face
            + ": the crop is not four fractions from 0 to 1 with left before right and top before"
            + " bottom.\n  What to do: write left, top, right, bottom, such as 0.1,0.2,0.9,0.8, or"
            + " leave it out.\n");
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, "--crop", face + "=0,0.1,1,1"),
        "vestibule: the crop of photograph "
            + face
            + " keeps some of the upper half of a face.\n  What to do: name a part below the middle of"
            + " the picture, without eyes and nose; or leave the crop out, with a consent that covers"
            + " the face.\n");
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, "--crop", face + "=0.97,0.5,1,1"),
        "vestibule: the crop of photograph "
            + face
            + " holds no whole block of the picture.\n"
            + "  What to do: name a larger part: the picture's blocks are 16 x 16 samples.\n");
  }

  private void assertRefused(Asked asked, String words) {
    assertThat(asked.err()).isEqualTo(words);
    assertThat(asked.code()).isEqualTo(3);
    assertThat(folder.resolve("out")).doesNotExist();
  }

  /** What is looked at first is what leaves then, byte for byte; and nothing is recorded of it. */
  @Test
  void aPersonCanLookBeforeAnythingLeaves() throws IOException {
    String crop = face + "=" + PART;
    Asked looked = Asked.of(home, "release", "look", face, "--crop", crop, "--to", "look");
    assertThat(looked.err()).isEmpty();
    assertThat(looked.out())
        .isEqualTo(
            "Wrote 1 picture into look. Nothing was released: look at them, then delete them.\n");
    assertThat(Asked.of(home, "release", "list").out())
        .isEqualTo("No copies have left the practice.\n");
    assertThat(make("teaching", "out", "--looked-by", WHO, "--crop", crop).err()).isEmpty();
    assertThat(Files.readAllBytes(folder.resolve("look/" + face + ".jpg")))
        .isEqualTo(Files.readAllBytes(folder.resolve("out/jpeg/copy-01.jpg")));
    Asked again = Asked.of(home, "release", "look", face, "--to", "look");
    assertThat(again.err())
        .isEqualTo(
            """
            vestibule: look is already there.
              What to do: name another place; nothing was overwritten.
            """);
    assertThat(again.code()).isEqualTo(3);
    assertThat(
            Asked.of(home, "release", "look", face, "--crop", "abcdef=0,0.5,1,1", "--to", "b")
                .err())
        .isEqualTo(
            """
            vestibule: a crop is said for abcdef, which is not among the photographs.
              What to do: write the id as it stands among the photographs.
            """);
    try (Stream<Path> all = Files.list(folder)) {
      assertThat(all.map(path -> path.getFileName().toString()))
          .doesNotContain("b")
          .noneMatch(name -> name.startsWith(".look"));
    }
  }
}
