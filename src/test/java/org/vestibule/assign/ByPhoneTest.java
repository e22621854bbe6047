package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.Assignment.Waits;

/** A phone's page was opened for a visit: that is a person's word for the visit, no more. */
class ByPhoneTest {

  /** Before the visit's beginning as it was planned, and long after its end. */
  private static final LocalDateTime OPENED = LocalDateTime.of(2026, 3, 11, 10, 5);

  private static final LocalDateTime RECEIVED = LocalDateTime.of(2026, 3, 11, 12, 30);

  private static PersonWords words(String visit, String view) {
    return PersonWords.by("B. Rook")
        .with(PhotoFact.VISIT, visit)
        .with(PhotoFact.VIEW, view)
        .byPhone(new PhoneStay(OPENED, RECEIVED));
  }

  private static Assignment assign(Practice practice, PersonWords... elsewhere) {
    return practice.byPhone(List.of(elsewhere));
  }

  private static List<String> reasons(Assignment assignment) {
    return ((Waits) assignment).reasons().stream().map(WaitReason::line).toList();
  }

  @Test
  void theVisitIsKnownAndWhatNobodySaidWaits() {
    Waits waits =
        (Waits)
            assign(
                new Practice().photo("a.jpg", Practice.taken(Practice.IN_B).build()),
                words("VB", ""));
    assertThat(waits.proposal().facts()).containsEntry(PhotoFact.VISIT, "VB");
    assertThat(waits.reasons())
        .extracting(WaitReason::kind)
        .contains(WaitReason.Kind.NO_VIEW)
        .doesNotContain(WaitReason.Kind.NO_VISIT, WaitReason.Kind.CONTRADICTION);
  }

  @Test
  void withARowForTheRestItIsFiledInThePersonsName() {
    Decided decided =
        (Decided)
            assign(
                new Practice()
                    .list("file,mirror", "a.jpg,none")
                    .photo("a.jpg", Practice.taken(Practice.IN_B).build()),
                words("VB", "frontal"));
    assertThat(decided.decision().visit().key()).isEqualTo("VB");
    assertThat(decided.decision().facts())
        .contains("it came by a phone's page that a person opened for the visit");
  }

  /** Visits last longer than planned; what was taken while the page was open is of that visit. */
  @Test
  void whatWasTakenWhileThePageWasOpenIsOfTheVisit() {
    Practice late =
        new Practice()
            .list("file,mirror", "a.jpg,none")
            .photo("a.jpg", Practice.taken(LocalDateTime.of(2026, 3, 11, 12, 20)).build());
    assertThat(((Decided) assign(late, words("VB", "frontal"))).decision().facts())
        .contains("taken while the phone's page was open for the visit");
  }

  @Test
  void anOlderPhotographOfTheRollWaits() {
    for (LocalDateTime taken :
        List.of(LocalDateTime.of(2026, 3, 11, 9, 10), LocalDateTime.of(2026, 3, 11, 12, 31))) {
      Practice old =
          new Practice()
              .list("file,mirror", "a.jpg,none")
              .photo("a.jpg", Practice.taken(taken).build());
      assertThat(reasons(assign(old, words("VB", "frontal"))))
          .contains(
              "its time lies outside the visit that its phone's page was opened for; it may be an"
                  + " older photograph of the roll: look whose it is and file it by hand");
    }
  }

  @Test
  void whatContradictsItWaits() {
    Practice row =
        new Practice()
            .list("file,visit,mirror", "a.jpg,VA,none")
            .photo("a.jpg", Practice.taken(Practice.IN_B).build());
    assertThat(reasons(assign(row, words("VB", "frontal"))))
        .contains(
            "its row names another visit than was said at the phone it came by; find out which is"
                + " right; then correct the row, or file it by hand");
    Practice two = new Practice().photo("a.jpg", Practice.taken(Practice.IN_B).build());
    assertThat(reasons(assign(two, words("VB", "frontal"), words("VA", "frontal"))))
        .contains(
            "it came by phone twice, and with another visit each time; look which is right and file"
                + " it by hand");
    Practice gone = new Practice().photo("a.jpg", Practice.taken(Practice.IN_B).build());
    assertThat(reasons(assign(gone, words("VX", "frontal"))))
        .contains(
            "its phone's page was opened for a visit that is not in the visit list; enter the"
                + " visit");
  }
}
