package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.KeptPhoto;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.DecisionRow;

/** Filing by a person's word, each photograph of one roll that nobody described. */
class FileCommandTest {

  private static final String ADA = "Ada Example";

  @TempDir private static Path folder;

  private static TestHome home;
  private static String upper;
  private static String frontal;
  private static String smile;
  private static String left;
  private static String narrow;
  private static String unnamed;
  private static String again;

  @BeforeAll
  static void layOut() throws IOException {
    home = TestHome.in(folder);
    upper = home.put("upper.jpg", Scene.UPPER_OCCLUSAL, 1);
    frontal = home.put("frontal.jpg", Scene.FRONTAL, 2);
    smile = home.put("smile.jpg", Scene.FRONTAL, 3);
    left = home.put("left.jpg", Scene.LEFT_BUCCAL, 4);
    unnamed = home.put("unnamed.jpg", Scene.FRONTAL, 5);
    again = home.put("again.jpg", Scene.FRONTAL, 6);
    BufferedImage odd = SampleRoll.picture(Scene.RIGHT_BUCCAL, 150, 128);
    narrow = home.put("narrow.jpg", TestHome.photo(odd, 7).orientation(1).bytes());
    assertThat(home.ingest().waiting()).hasSize(7);
  }

  @Test
  void everyFactIsTakenFromThePersonAndEchoed() throws IOException {
    Asked filed =
        Asked.by(
            ADA,
            home,
            "file",
            upper,
            "--visit",
            "V1",
            "--view",
            "upper occlusal",
            "--teeth",
            "16",
            "--mirror",
            "as shot",
            "--incisors",
            "top",
            "--crop",
            "0.2,0.25,0.8,0.75",
            "--accessory",
            "double-ended retractor",
            "--stage",
            "before",
            "--treatment",
            "onlay 16",
            "--note",
            "first of two");
    assertThat(filed.err()).isEmpty();
    assertThat(filed.code()).isZero();
    assertThat(filed.out())
        .isEqualTo(
            "Filed "
                + upper
                + " (upper.jpg): Orla Tallgrass, visit V1 of 2026-03-12, Upper occlusal, upper right first molar (16);"
                + " flipped left to right; cropped, whole frame kept.\n");
    DataSet object = object(upper);
    assertThat(object.string(Tags.PatientID)).contains("P1");
    assertThat(object.strings(Tags.PatientOrientation)).containsExactly("L", "P");
    assertThat(object.string(Tags.Columns)).contains("96");
    assertThat(object.string(Tags.Rows)).contains("64");
    assertThat(object.strings(Tags.ImageType)).startsWith("DERIVED");
    assertThat(object(upper + "-frame").string(Tags.Columns)).contains("160");
    DecisionRow decision = lastDecision(upper);
    assertThat(decision.decidedBy()).isEqualTo(ADA);
    assertThat(decision.source()).isEqualTo("person");
    assertThat(decision.json()).contains("onlay 16", "first of two", "BEFORE", "retractor-double");
  }

  @Test
  void oneWordFilesSeveral() throws IOException {
    Asked filed =
        Asked.by(
            ADA,
            home,
            "file",
            frontal,
            smile,
            "--visit",
            "V1",
            "--view",
            "frontal",
            "--mirror",
            "none");
    assertThat(filed.code()).isZero();
    assertThat(filed.out().lines())
        .containsExactly(
            "Filed "
                + frontal
                + " (frontal.jpg): Orla Tallgrass, visit V1 of 2026-03-12, Frontal, teeth together.",
            "Filed "
                + smile
                + " (smile.jpg): Orla Tallgrass, visit V1 of 2026-03-12, Frontal, teeth together.");
    assertThat(lastDecision(smile).decidedBy()).isEqualTo(ADA);
  }

  @Test
  void aNameIsNeeded() throws IOException {
    Asked asked =
        Asked.of(home, "file", unnamed, "--visit", "V1", "--view", "frontal", "--mirror", "none");
    assertThat(asked.code()).isEqualTo(2);
    assertThat(asked.out()).isEmpty();
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: nobody's name was given, and decisions about patients' photographs need"
                + " one.\n  What to do: add --by \"Your Name\", or set VESTIBULE_BY.\n");
    assertThat(Asked.by(" ", home, "file", unnamed, "--visit", "V1").code()).isEqualTo(2);
    try (Practice practice = home.open()) {
      assertThat(practice.store().ledger().decisions().of(TestHome.hash(practice, unnamed)))
          .isEmpty();
    }
  }

  @Test
  void whatIsNotSaidAndNotKnownIsAskedFor() {
    Asked asked = Asked.by(ADA, home, "file", left, "--visit", "V1", "--view", "left buccal");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err()).startsWith(left + ":\nvestibule: ").contains("mirror");
    Asked filed =
        Asked.by(
            ADA, home, "file", left, "--visit", "V1", "--view", "left buccal", "--mirror", "none");
    assertThat(filed.out())
        .isEqualTo(
            "Filed "
                + left
                + " (left.jpg): Orla Tallgrass, visit V1 of 2026-03-12, Left buccal.\n");
  }

  @Test
  void trimmingIsOnlyDoneWhenAPersonAllowsIt() throws IOException {
    String[] words = {
      "file", narrow, "--visit", "V1", "--view", "right buccal", "--mirror", "as shot"
    };
    Asked refused = Asked.by(ADA, home, words);
    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.err()).contains("150 samples wide").contains("trim");
    String[] trimmed = java.util.Arrays.copyOf(words, words.length + 1);
    trimmed[words.length] = "--trim";
    Asked filed = Asked.by(ADA, home, trimmed);
    assertThat(filed.out())
        .isEqualTo(
            "Filed "
                + narrow
                + " (narrow.jpg): Orla Tallgrass, visit V1 of 2026-03-12, Right buccal; flipped left to right; dropped at"
                + " the edge: 6 columns, 0 rows.\n");
    assertThat(object(narrow).string(Tags.Columns)).contains("144");
  }

  @Test
  void whatIsFiledAlreadyIsNotFiledTwice() {
    String[] words = {"file", again, "--visit", "V1", "--view", "frontal", "--mirror", "none"};
    assertThat(Asked.by(ADA, home, words).code()).isZero();
    Asked second = Asked.by(ADA, home, words);
    assertThat(second.code()).isEqualTo(3);
    assertThat(second.err())
        .isEqualTo(
            again
                + ":\nvestibule: this photograph is filed already.\n"
                + "  What to do: correct it with move.\n");
  }

  @Test
  void oneOfSeveralThatCannotBeFiledDoesNotStopTheOthers() {
    Asked asked = Asked.by(ADA, home, "file", "0000000000", "nonsense", "--view", "frontal");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            0000000000:
            vestibule: no photograph has the id 0000000000.
              What to do: give the id that find and waiting print.
            nonsense:
            vestibule: "nonsense" is not the id of a photograph.
              What to do: give the id that find and waiting print, at least its first 6 digits, with -frame for the whole frame of a cropped photograph.
            """);
  }

  private static DataSet object(String id) throws IOException {
    try (Practice practice = home.open()) {
      return new KeptPhoto(practice).object(id).orThrow();
    }
  }

  private static DecisionRow lastDecision(String id) throws IOException {
    try (Practice practice = home.open()) {
      var all = practice.store().ledger().decisions().of(TestHome.hash(practice, id));
      return all.get(all.size() - 1);
    }
  }
}
