package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.assign.Practice.IN_A;
import static org.vestibule.assign.Practice.IN_B;
import static org.vestibule.assign.Practice.NOBODY;
import static org.vestibule.assign.Practice.taken;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Turn;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Stage;
import org.vestibule.intake.CaptureFacts;

class AssignerTest {

  private static final CaptureFacts A = taken(IN_A).build();

  @Test
  void aRowThatSaysEverythingDecides() {
    Assignment.Decided decided =
        decided(
            new Practice()
                .rows(
                    "a.jpg,,VA,00417,upper occlusal,16,as shot,bottom,0.1 0.2 0.9 0.8,"
                        + "contraster-occlusal|retractor-c,before,onlay,a note,yes,Ann")
                .photo("a.jpg", A));
    Decision decision = decided.decision();
    assertThat(decision.visit().key()).isEqualTo("VA");
    assertThat(decision.view().key()).isEqualTo("upper-occlusal");
    assertThat(decision.teeth().text()).isEqualTo("FDI 16");
    assertThat(decision.mirror()).isEqualTo(Mirror.AS_SHOT);
    assertThat(decision.incisors()).isEqualTo(Incisors.BOTTOM);
    assertThat(decision.seen()).isFalse();
    assertThat(decision.crop()).isEqualTo(new Crop(0.1, 0.2, 0.9, 0.8));
    assertThat(decision.accessories()).hasSize(2);
    assertThat(decision.stage()).isEqualTo(Stage.BEFORE);
    assertThat(decision.treatment()).isEqualTo("onlay");
    assertThat(decision.note()).isEqualTo("a note");
    assertThat(decision.mayTrim()).isTrue();
    assertThat(decision.decidedBy()).isEqualTo("Ann");
    assertThat(decision.facts())
        .startsWith("a person's row names the visit", "taken during the visit");
    // TRADE arithmetic: operator in front, raw upper occlusal is L\A; one vertical flip gives L\P.
    assertThat(decided.laid().turn()).isEqualTo(Turn.FLIP_VERTICAL);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      textBlock =
          """
          VA,00562,frontal,,none     | CONTRADICTION | its row names a visit and a patient that don't belong together
          VB,,frontal,,none          | CONTRADICTION | its time lies outside the visit that its row names
          VX,,frontal,,none          | UNKNOWN_WORD  | its row names a visit that is not in the visit list
          ,418,frontal,,none         | UNKNOWN_WORD  | its row names a patient or visit that is not in the visit list
          ,00562,frontal,,none       | NO_VISIT      | its row names a patient, but its time lies in none of that patient's visits
          ,,frontal,,none            | ONE_FACT      | only its time points to a visit
          VA,,,,none                 | NO_VIEW       | nobody said which view it shows
          VA,,occlusal,,none         | UNKNOWN_WORD  | view: "occlusal" could mean several views
          VA,,frontal,99,none        | UNKNOWN_WORD  | -
          VA,,frontal,,maybe         | UNKNOWN_WORD  | mirror: the mirror is not said in words that are understood
          VA,,frontal,,              | NO_MIRROR     | nobody said whether this picture was taken in a mirror, so right and left are not known
          VA,,upper occlusal,,as shot | ORIENTATION  | nobody said where the incisors lie in this Upper occlusal
          VA,,right buccal,26,none   | CONTRADICTION | the view Right buccal does not show upper left first molar (26)
          VA,,upper anterior,41,none | CONTRADICTION | -
          VA,,frontal,,none,middle   | UNKNOWN_WORD  | incisors: where the incisors lie is not said in words that are understood
          VA,,frontal,,none,,1 2 3 4 | UNKNOWN_WORD  | crop: the crop is not four fractions from 0 to 1 with left before right and top before bottom
          VA,,frontal,,none,,,spoon  | UNKNOWN_WORD  | -
          VA,,frontal,,none,,,,soon  | UNKNOWN_WORD  | -
          VA,,frontal,,none,,,,,,,perhaps | UNKNOWN_WORD | trim: it is neither yes nor no
          """)
  void aRowThatDoesNotSufficeWaits(String row, String kind, @Nullable String sentence) {
    Assignment.Waits waits = waits(new Practice().rows("a.jpg,," + row).photo("a.jpg", A));
    assertThat(waits.reasons()).extracting(WaitReason::kind).contains(Kind.valueOf(kind));
    if (sentence != null) {
      assertThat(waits.reasons()).extracting(WaitReason::sentence).contains(sentence);
    }
    assertThat(waits.reasons()).allSatisfy(r -> assertThat(r.advice()).isNotBlank());
  }

  @ParameterizedTest
  @CsvSource({
    "09:00:00, true",
    "09:45:00, true",
    "08:45:00, true",
    "10:00:00, true",
    "08:44:59, false",
    "08:52:00, false",
    "10:00:01, false",
    "10:14:59, false",
    "10:15:00, false"
  })
  void aRowsVisitMayMissTheWindowByAQuarterOfAnHour(String time, boolean files) {
    Practice practice =
        new Practice()
            .rows("a.jpg,,VA,,frontal,,none")
            .photo("a.jpg", taken(LocalDateTime.parse("2026-03-11T" + time)).build());
    assertThat(practice.first() instanceof Assignment.Decided).isEqualTo(files);
  }

  @Test
  void teethTellTheArchOfAViewButNeverItsSide() {
    assertThat(
            decided(new Practice().rows("a.jpg,,VA,,shade tab,41,none").photo("a.jpg", A))
                .decision()
                .view()
                .key())
        .isEqualTo("shade-lower");
    for (String row :
        List.of("shade tab,,none", "shade tab,\"11, 41\",none", "buccal bite,16,none")) {
      assertThat(kinds(waits(new Practice().rows("a.jpg,,VA,," + row).photo("a.jpg", A))))
          .contains(Kind.UNKNOWN_WORD);
    }
  }

  @Test
  void aPatientAndATimeInTheirOnlyFittingVisitDecide() {
    assertThat(decided(new Practice().rows("a.jpg,,,00417,frontal,,none").photo("a.jpg", A)))
        .extracting(decided -> decided.decision().visit().key())
        .isEqualTo("VA");
  }

  @Test
  void aFolderAndATimeAreTwoFactsUnlessOfOneExport() {
    Practice two =
        new Practice()
            .pattern("{patient}/{date}/*")
            .declares("frontal", "none", "")
            .rows("a.jpg,,,,frontal")
            .photo("00417/2026-03-11/a.jpg", A);
    assertThat(decided(two).decision().visit().key()).isEqualTo("VA");
    Assignment.Waits waits = waits(two.oneExport());
    assertThat(kinds(waits)).containsExactly(Kind.ONE_FACT);
    assertThat(waits.proposal().get(PhotoFact.VISIT)).isEqualTo("VA");
  }

  @ParameterizedTest
  @CsvSource({
    "00417/2026-03-12/a.jpg, CONTRADICTION",
    "00417/2026-13-11/a.jpg, UNKNOWN_WORD",
    "00562/2026-03-11/a.jpg, CONTRADICTION",
    "00999/2026-03-11/a.jpg, UNKNOWN_WORD"
  })
  void aFolderThatDoesNotFitWaits(String name, Kind kind) {
    Practice practice =
        new Practice().pattern("{patient}/{date}/*").rows("a.jpg,,,,frontal,,none").photo(name, A);
    assertThat(kinds(waits(practice))).contains(kind);
  }

  @Test
  void aRowAndAFolderThatNameDifferentPatientsWait() {
    Practice practice =
        new Practice()
            .pattern("{patient}/*")
            .rows("a.jpg,,VA,,frontal,,none")
            .photo("00562/a.jpg", A);
    assertThat(waits(practice).reasons())
        .extracting(WaitReason::sentence)
        .containsExactly("its row names another patient or visit than its folder or file name");
  }

  @Test
  void namesCanGiveViewAndTeethButNeverDisagreeWithTheRow() {
    Practice names =
        new Practice()
            .pattern("{patient}_{view}_{teeth}")
            .declares("upper-occlusal", "as shot", "bottom")
            .photo("00417_upper-occlusal_16.jpg", A);
    assertThat(decided(names).decision().teeth().text()).isEqualTo("FDI 16");
    assertThat(
            kinds(waits(names.rows("00417_upper-occlusal_16.jpg,,VA,,lower occlusal,17,as shot"))))
        .contains(Kind.CONTRADICTION);
  }

  @Test
  void aStandingStatementFillsMirrorAndIncisorsAndIsNamed() {
    Practice practice =
        new Practice()
            .declares("upper-occlusal", "as shot", "bottom")
            .rows("a.jpg,,VA,,upper occlusal")
            .photo("a.jpg", A);
    Decision decision = decided(practice).decision();
    assertThat(decision.incisors()).isEqualTo(Incisors.BOTTOM);
    assertThat(decision.seen()).isFalse();
    assertThat(decision.facts())
        .contains(
            "the mirror by the standing statement of Bo Quillfeather",
            "the incisors by the standing statement of Bo Quillfeather");
  }

  @Test
  void aStandingStatementDoesNotSpeakOfOtherCamerasOrMirrors() {
    Practice practice = new Practice().declares("upper-occlusal", "as shot", "bottom");
    assertThat(
            kinds(
                waits(
                    practice
                        .rows("a.jpg,,VA,,upper occlusal")
                        .photo("a.jpg", taken(IN_A).model("P2").build()))))
        .contains(Kind.NO_MIRROR);
    assertThat(
            kinds(
                waits(
                    new Practice()
                        .declares("upper-occlusal", "as shot", "bottom")
                        .rows("a.jpg,,VA,,upper occlusal,,none seen")
                        .photo("a.jpg", A))))
        .containsExactly(Kind.ORIENTATION);
  }

  /** A spreadsheet takes a number's leading zeros away (common practice, no source). */
  @Test
  void aNumberThatLostItsZerosIsSaidToHaveLostThem() {
    Assignment.Waits waits =
        waits(new Practice().rows("a.jpg,,,417,frontal,,none").photo("a.jpg", A));

    assertThat(waits.reasons())
        .singleElement()
        .extracting(WaitReason::line)
        .isEqualTo(
            "column patient: its number is one of the visit list but for leading zeros, which a"
                + " spreadsheet probably dropped; format the column as text and enter the number"
                + " again");
  }

  @Test
  void whatIsUsualIsOnlyProposed() {
    Proposal proposal =
        waits(new Practice().rows("a.jpg,,VA,,upper occlusal").photo("a.jpg", A)).proposal();
    assertThat(proposal.get(PhotoFact.MIRROR)).isEqualTo("as shot");
    assertThat(proposal.mirrorStated()).isFalse();
    assertThat(proposal.get(PhotoFact.VISIT)).isEqualTo("VA");
    assertThat(proposal.get(PhotoFact.PATIENT)).isEqualTo("00417");
  }

  @Test
  void anEditedOrFrontLensPictureNeedsEyesOnIt() {
    CaptureFacts edited = taken(IN_A).editingTraces(List.of("cropped")).build();
    CaptureFacts front = taken(IN_A).frontLens(true).build();
    for (CaptureFacts facts : List.of(edited, front)) {
      assertThat(
              kinds(waits(new Practice().rows("a.jpg,,VA,,frontal,,none").photo("a.jpg", facts))))
          .containsExactly(Kind.ORIENTATION);
      assertThat(
              decided(new Practice().rows("a.jpg,,VA,,frontal,,none (seen)").photo("a.jpg", facts))
                  .decision()
                  .seen())
          .isTrue();
    }
  }

  @Test
  void versionsOfOneShotAreOneCase() {
    Practice practice = new Practice().photo("IMG_0007.JPG", A).photo("IMG_E0007.JPG", A);
    String row = ",,VA,,frontal,,none";
    practice.rows("IMG_0007.JPG" + row, "IMG_E0007.JPG" + row);
    assertThat(kinds((Assignment.Waits) practice.assign(0))).containsExactly(Kind.SAME_SHOT);
    assertThat(kinds((Assignment.Waits) practice.assign(1))).containsExactly(Kind.SAME_SHOT);
    practice.rows("IMG_0007.JPG" + row, "IMG_E0007.JPG,2026-03-11 09:10");
    assertThat(practice.assign(0)).isInstanceOf(Assignment.Decided.class);
    assertThat(kinds((Assignment.Waits) practice.assign(1))).contains(Kind.OTHER_VERSION);
    practice.rows();
    assertThat(kinds((Assignment.Waits) practice.assign(0))).contains(Kind.SAME_SHOT);
  }

  @Test
  void theDoubledHourWaitsWithoutAnOffset() {
    LocalDateTime twice = LocalDateTime.of(2026, 10, 25, 2, 30);
    String row = "a.jpg,,VN,,frontal,,none";
    assertThat(kinds(waits(new Practice().rows(row).photo("a.jpg", taken(twice).build()))))
        .containsExactly(Kind.TIME);
    assertThat(
            decided(
                    new Practice()
                        .rows(row)
                        .photo("a.jpg", taken(twice).offset(ZoneOffset.ofHours(2)).build()))
                .decision()
                .visit()
                .key())
        .isEqualTo("VN");
  }

  @Test
  void aClockInAnotherZoneIsNoSecondFact() {
    CaptureFacts away = taken(IN_A).offset(ZoneOffset.ofHours(-5)).build();
    assertThat(
            kinds(
                waits(
                    new Practice()
                        .pattern("{patient}/*")
                        .rows("a.jpg,,,,frontal,,none")
                        .photo("00417/a.jpg", away))))
        .containsExactly(Kind.TIME);
  }

  @Test
  void aPhotographWithoutTimeRestsOnTheRowsVisit() {
    CaptureFacts timeless = taken(null).build();
    assertThat(
            decided(new Practice().rows("a.jpg,,VA,,frontal,,none").photo("a.jpg", timeless))
                .decision()
                .facts())
        .contains("the photograph has no time to compare with the visit");
    assertThat(
            kinds(
                waits(new Practice().rows("a.jpg,,,00417,frontal,,none").photo("a.jpg", timeless))))
        .containsExactly(Kind.TIME);
  }

  @Test
  void aRowMayNameTheCopyThatTheRollLeftOut() {
    Practice practice =
        new Practice()
            .rows("a.jpg,,VA,,frontal,,none")
            .photo("a(1).jpg", A)
            .duplicate("a.jpg", "a(1).jpg");
    assertThat(decided(practice).decision().visit().key()).isEqualTo("VA");
  }

  @Test
  void rowsThatMeanOneFileOrSeveralWait() {
    assertThat(
            kinds(
                waits(
                    new Practice()
                        .rows("d/a.jpg,,VA,,frontal,,none", "a.jpg,,VA,,face smiling,,none")
                        .photo("d/a.jpg", A))))
        .containsExactly(Kind.CONTRADICTION);
    assertThat(
            kinds(
                waits(
                    new Practice()
                        .rows("a.jpg,,VA,,frontal,,none")
                        .photo("d/a.jpg", A)
                        .photo("e/a.jpg", taken(IN_B).build()))))
        .contains(Kind.CONTRADICTION);
  }

  @Test
  void aPhotographThatNobodyMentionsSaysWhatIsMissing() {
    Assignment.Waits waits = waits(new Practice().photo("x.jpg", taken(NOBODY).build()));
    assertThat(kinds(waits)).containsExactly(Kind.NO_VISIT, Kind.NO_VIEW);
    assertThat(waits.proposal().get(PhotoFact.VISIT)).isNull();
  }

  private static Assignment.Decided decided(Practice practice) {
    assertThat(practice.first()).isInstanceOf(Assignment.Decided.class);
    return (Assignment.Decided) practice.first();
  }

  private static Assignment.Waits waits(Practice practice) {
    assertThat(practice.first()).isInstanceOf(Assignment.Waits.class);
    return (Assignment.Waits) practice.first();
  }

  private static List<Kind> kinds(Assignment.Waits waits) {
    return waits.reasons().stream().map(WaitReason::kind).toList();
  }
}
