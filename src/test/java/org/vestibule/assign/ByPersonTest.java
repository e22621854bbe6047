package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.assign.Practice.IN_A;
import static org.vestibule.assign.Practice.IN_B;
import static org.vestibule.assign.Practice.taken;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Incisors;
import org.vestibule.intake.CaptureFacts;

class ByPersonTest {

  private final Assigner assigner = new Practice().assigner();
  private final CaptureFacts facts = taken(IN_A).build();

  @Test
  void followsThePersonAndRecordsTheirName() {
    Decision decision =
        assigner
            .byPerson(
                taken(IN_A).orientation(6).build(),
                words("VA", "", "upper occlusal", "16", "as shot", "bottom", "Ann"))
            .orThrow()
            .decision();
    assertThat(decision.decidedBy()).isEqualTo("Ann");
    assertThat(decision.seen()).isTrue();
    // Exif 6 shows the first column at the top, so the sheet's bottom is the raw right edge.
    assertThat(decision.incisors()).isEqualTo(Incisors.RIGHT);
  }

  @Test
  void warnsWhereTheTimeSpeaksAgainstIt() {
    Decision decision =
        assigner
            .byPerson(taken(IN_B).build(), words("VA", "", "frontal", "", "none", "", "Ann"))
            .orThrow()
            .decision();
    assertThat(decision.facts())
        .contains(
            "warning: the photograph's time lies outside the visit; the person's word was"
                + " followed");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          VA,,frontal,,none,,           | nobody is named as the person who decides | say who you are
          ,,frontal,,none,,Ann          | nobody said whose photograph it is | name the visit by its key; visits add enters one
          VX,,frontal,,none,,Ann        | no visit of this key is in the visit list | check the key, or enter the visit with visits add
          ,417,frontal,,none,,Ann       | no patient in the visit list has this number | check the number, leading zeros included, or enter the visit with visits add
          ,00562,frontal,,none,,Ann     | the patient's number does not tell which visit: the photograph's time lies in none of that patient's visits | name the visit by its key
          VA,00562,frontal,,none,,Ann   | the visit is not one of the patient of this number | leave out the one that is wrong
          VA,,,,none,,Ann               | nobody said which view it shows | name the view, such as upper occlusal, and the mirror
          VA,,frontal,,,,Ann            | nobody said whether this picture was taken in a mirror, so right and left are not known | state the mirror: none, as shot, or already corrected
          VA,,lower occlusal,16,as shot,top,Ann | the view Lower occlusal does not show upper right first molar (16) | look at the photograph and correct the view or the teeth
          """)
  void refusesWithWhatToAdd(String said, String reason, String advice) {
    String[] w = said.split(",", -1);
    assertThat(assigner.byPerson(facts, words(w[0], w[1], w[2], w[3], w[4], w[5], w[6])))
        .isEqualTo(Outcome.refused(reason, advice));
  }

  @Test
  void findsThePatientsOnlyFittingVisit() {
    assertThat(
            assigner
                .byPerson(facts, words("", "00417", "frontal", "", "none", "", "Ann"))
                .orThrow()
                .decision()
                .visit()
                .key())
        .isEqualTo("VA");
  }

  /** Two issuers may give one number to two patients (PS3.3 C.7.1.1, Issuer of Patient ID). */
  @Test
  void aNumberOfTwoIssuersNamesNobody() {
    String list =
        """
        visit;patient id;issuer;name;start;end
        V1;0123;MILL;Ash, Ida;2026-03-11 08:00;08:30
        V2;0123;HILL;Elm, Bo;2026-03-11 09:00;09:45
        """;
    VisitList visits = VisitList.parse(list.getBytes(StandardCharsets.UTF_8), "list", "").orThrow();
    PersonWords words = words(null, "0123", "frontal", null, "none", null, "Ann");

    Outcome<Assignment.Decided> outcome =
        new PhotoAssigner(Practice.sources(visits), Practice.taken(Practice.IN_A).build())
            .byPerson(words);

    assertThat(((Outcome.Refused<Assignment.Decided>) outcome).sentence())
        .isEqualTo("two issuers gave this number to different patients: name the visit by its key");
  }

  private static PersonWords words(
      String visit,
      String patient,
      String view,
      String teeth,
      String mirror,
      String incisors,
      String by) {
    return PersonWords.by(by)
        .seenByPerson()
        .with(PhotoFact.VISIT, visit)
        .with(PhotoFact.PATIENT, patient)
        .with(PhotoFact.VIEW, view)
        .with(PhotoFact.TEETH, teeth)
        .with(PhotoFact.MIRROR, mirror)
        .with(PhotoFact.INCISORS, incisors);
  }
}
