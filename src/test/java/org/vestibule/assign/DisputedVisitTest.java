package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;
import org.vestibule.intake.CaptureFacts;

/**
 * A list against the record. An export shifted by a row gives a number to another person; so it
 * waits (common practice, no source).
 */
class DisputedVisitTest {

  private static final String SENTENCE =
      "the visit list gives this patient's number another name than the record";
  private static final LocalDateTime TEN = LocalDateTime.of(2026, 3, 12, 10, 5);
  private static final Patient IDA =
      new Patient("0417", "MILL", "Ash^Ida", LocalDate.of(1988, 4, 2), Sex.FEMALE);
  private static final Visit EARLIER =
      new Visit("V1", IDA, TEN.minusDays(1), TEN.minusDays(1).plusMinutes(45), "", "", "", "");

  @Test
  void aListThatSaysTheSameOrLessIsSound() {
    VisitList sound = list("V2;0417;MILL;Ash, Ida;;;2026-03-12 10:00;10:45");

    assertThat(sound.disputed()).isEmpty();
    assertThat(sound.visits()).extracting(Visit::key).containsExactly("V1", "V2");
    assertThat(sound.byKey("V2").orElseThrow().patient())
        .as("what the list leaves out stays as recorded")
        .isEqualTo(IDA);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "V2;0417;MILL;Elm, Bo;1988-04-02;f;2026-03-12 10:00;10:45 | name",
        "V2;0417;MILL;Ash, Ida;1958-04-02;f;2026-03-12 10:00;10:45 | birth date",
        "V2;0417;MILL;Ash, Ida;1988-04-02;m;2026-03-12 10:00;10:45 | sex"
      })
  void aPatientsDetailsAreNotChangedByAList(String row, String column) {
    VisitList disputed = list(row);

    assertThat(disputed.visits()).extracting(Visit::key).containsExactly("V1");
    assertThat(disputed.disputed())
        .singleElement()
        .satisfies(
            against -> {
              assertThat(against.ofPatient()).isTrue();
              assertThat(against.sentence()).isEqualTo(SENTENCE.replace("name", column));
            });
  }

  @Test
  void aKeyIsNotPassedOn() {
    VisitList disputed = list("V1;0562;MILL;Elm, Bo;;;2026-03-12 10:00;10:45");

    assertThat(disputed.visits()).isEmpty();
    assertThat(disputed.disputed())
        .singleElement()
        .extracting(Disputed::sentence)
        .isEqualTo("the visit list gives another patient the key of a visit that is on record");
  }

  @Test
  void anIssuersOwnPatientOfTheSameNumberIsAnother() {
    VisitList sound = list("V2;0417;HILL;Elm, Bo;;;2026-03-12 10:00;10:45");

    assertThat(sound.disputed()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"V2,", ",0417"})
  void aRowThatNamesItWaits(String visit, String patient) {
    AssignSources sources = sources();
    PersonWords words = words(visit, patient);
    Assignment waits = new PhotoAssigner(sources, facts()).assign(words, NameFacts.NONE, List.of());

    assertThat(((Assignment.Waits) waits).reasons())
        .extracting(WaitReason::sentence)
        .containsExactly(SENTENCE);
  }

  @ParameterizedTest
  @CsvSource({"V2,", ",0417"})
  void aPersonIsToldToo(String visit, String patient) {
    Outcome<Assignment.Decided> refused =
        new PhotoAssigner(sources(), facts()).byPerson(words(visit, patient));

    assertThat(((Outcome.Refused<Assignment.Decided>) refused).sentence())
        .isEqualTo(
            SENTENCE
                + ": find out whose number it is and correct the list; if the patient's details did"
                + " change, say so with visits confirm");
  }

  @Test
  void whoIsConfirmedKeepsTheNumber() {
    Patient married = new Patient("0417", "mill", "Oak^Ida", null, Sex.NOT_SAID);

    assertThat(IDA.changedTo(married))
        .isEqualTo(new Patient("0417", "MILL", "Oak^Ida", IDA.birthDate(), Sex.FEMALE));
  }

  private static AssignSources sources() {
    return Practice.sources(list("V2;0417;MILL;Elm, Bo;;;2026-03-12 10:00;10:45"));
  }

  private static CaptureFacts facts() {
    return Practice.taken(TEN).orientation(1).build();
  }

  private static PersonWords words(String visit, String patient) {
    return PersonWords.by("Ann Oak")
        .with(PhotoFact.VISIT, visit)
        .with(PhotoFact.PATIENT, patient)
        .with(PhotoFact.VIEW, "frontal")
        .with(PhotoFact.MIRROR, "none");
  }

  private static VisitList list(String row) {
    String text = "visit;patient id;issuer;name;birth date;sex;start;end\n" + row + "\n";
    return VisitList.parse(text.getBytes(StandardCharsets.UTF_8), "list", "")
        .orThrow()
        .with(List.of(EARLIER));
  }
}
