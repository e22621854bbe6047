package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.release.Purposes;
import org.vestibule.store.ledger.ConsentRow;

/** Which consent lets a photograph go; common practice, no source: local law decides. */
class ConsentCheckTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 3, 14);
  private static final String ASK =
      "ask the patient, and record it with \"vestibule consent add\"; your local law says what a"
          + " consent has to look like";

  private static ConsentRow consent(
      boolean given,
      LocalDate on,
      @Nullable LocalDate expires,
      boolean face,
      @Nullable LocalDate ofAge) {
    return new ConsentRow(
        "",
        "P1",
        "teaching",
        given,
        on,
        expires,
        face,
        "form 3",
        "",
        ofAge,
        "A. Finch",
        Instant.EPOCH);
  }

  private static Outcome<String> ask(String purpose, @Nullable ConsentRow row, boolean face) {
    return new ConsentCheck(Purposes.find(purpose).orThrow(), TODAY)
        .allows(Optional.ofNullable(row), "abc123", face);
  }

  @Test
  void aConsentThatHoldsLetsItGo() {
    ConsentRow holds = consent(true, TODAY, TODAY, true, TODAY.plusDays(1));
    assertThat(ask("teaching", holds, true)).isEqualTo(Outcome.done("abc123"));
    assertThat(ask("own-copy", null, true)).isEqualTo(Outcome.done("abc123"));
  }

  @Test
  void oneThatIsMissingTakenBackEndedOrDatedAheadDoesNot() {
    LocalDate before = TODAY.minusDays(1);
    assertThat(ask("teaching", null, false))
        .isEqualTo(
            new Refused<>("the patient of photograph abc123 gave no consent to: Teaching", ASK));
    assertThat(ask("teaching", consent(false, before, null, true, null), false))
        .isEqualTo(
            new Refused<>(
                "the patient of photograph abc123 took the consent back on 2026-03-13 (Teaching)",
                "leave the photograph out"));
    assertThat(ask("teaching", consent(true, before, before, true, null), false))
        .isEqualTo(
            new Refused<>(
                "the consent of the patient of photograph abc123 ended on 2026-03-13", ASK));
    assertThat(ask("teaching", consent(true, TODAY.plusDays(1), null, true, null), false))
        .isEqualTo(
            new Refused<>(
                "the consent of the patient of photograph abc123 is dated 2026-03-15, after today",
                "check the day"));
  }

  @Test
  void aPatientWhoCameOfAgeIsAskedAgain() {
    assertThat(ask("teaching", consent(true, TODAY.minusYears(3), null, true, TODAY), false))
        .isEqualTo(
            new Refused<>(
                "a guardian gave the consent, and the patient of photograph abc123 is of age since"
                    + " 2026-03-14",
                ASK));
  }

  @Test
  void aFaceNeedsAConsentThatCoversIt() {
    ConsentRow noFace = consent(true, TODAY, null, false, null);
    assertThat(ask("teaching", noFace, false)).isEqualTo(Outcome.done("abc123"));
    assertThat(ask("teaching", noFace, true))
        .isEqualTo(
            new Refused<>(
                "photograph abc123 may show the face, and the consent does not cover the face",
                "leave it out, name the part without the face with --crop, or ask the patient for a"
                    + " consent that does"));
  }
}
