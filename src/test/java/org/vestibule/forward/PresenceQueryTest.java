package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** What an archive is asked over DICOM, and what its answers and its silence mean. */
class PresenceQueryTest {

  private static final int LEVEL = 0x00080052;
  private static final Instance HERE = new Instance("1.2.3", "2.25.1", "2.25.10", "2.25.11");
  private static final Instance MOVED = new Instance("1.2.3", "2.25.2", "2.25.10", "2.25.11");

  private static PresenceAnswer ask(FindPeer peer, Instance... instances) {
    try (ArchiveSession session = open(peer, Set.of())) {
      return session.ask(List.of(instances));
    }
  }

  private static ArchiveSession open(FindPeer peer, Set<Archive.Form> forms) {
    return QueriedArchive.open(peer.port(), forms).orThrow();
  }

  /** PS3.7 C.4.2.1.8: the comment is the archive's own text, and may be a name. */
  @Test
  void whatAnArchiveWritesIntoItsCommentStandsNowhere() throws IOException {
    Archive.Form form = new Archive.Form("1.2.3", "1.2.840.10008.1.2");
    byte[] bytes = new byte[1000];
    Parcel parcel =
        new Parcel(
            HERE,
            form.transferSyntaxUid(),
            Parcel.Kind.PHOTO,
            () -> new ByteArrayInputStream(bytes),
            bytes.length,
            0);
    try (FindPeer peer = new FindPeer(false, PresenceQueryTest::archive)) {
      peer.storeComment = FindPeer.text(0x0902, "Tallgrass^Orla is known as P2");
      try (ArchiveSession session = open(peer, Set.of(form))) {
        peer.storeStatus = 0xC001;
        assertThat(session.store(parcel))
            .isEqualTo(
                new StoreAnswer.Refused(
                    0xC001, "the archive can't understand the object (status C001)"));
        peer.storeStatus = 0xB000;
        assertThat(session.store(parcel).words())
            .isEqualTo("stored; the archive changed attributes (status B000)");
      }
    }
  }

  private static boolean names(DataSet question, int tag, String uid) {
    return question.strings(tag).contains(uid);
  }

  /** Has the first where it was sent, and the second in a study of its own. */
  private static FindPeer.Matches archive(DataSet question) {
    if (question.string(LEVEL).equals(Optional.of("STUDY"))) {
      return new FindPeer.Matches(0, List.of());
    }
    boolean anywhere = question.string(Tags.StudyInstanceUID).isEmpty();
    if (names(question, Tags.SOPInstanceUID, MOVED.sopInstanceUid()) && anywhere) {
      return new FindPeer.Matches(0, List.of(match(MOVED, "2.25.99")));
    }
    return new FindPeer.Matches(
        0,
        names(question, Tags.SOPInstanceUID, HERE.sopInstanceUid())
            ? List.of(match(HERE, "2.25.10"))
            : List.of());
  }

  private static DataSet match(Instance instance, String study) {
    return new DataSet()
        .put(Tags.SOPInstanceUID, instance.sopInstanceUid())
        .put(Tags.PatientID, "X-77")
        .put(Tags.StudyInstanceUID, study)
        .put(Tags.SeriesInstanceUID, "2.25.11");
  }

  /** PS3.4 C.5.1.1: a question without study and series is asked only where that was granted. */
  @Test
  void whatWasFiledUnderAnotherStudyIsFoundWhereTheArchiveLetsUsAskSo() throws IOException {
    try (FindPeer peer = new FindPeer(true, PresenceQueryTest::archive)) {
      assertThat(ask(peer, HERE, MOVED))
          .isEqualTo(
              new PresenceAnswer.Answered(
                  Map.of(
                      "2.25.1",
                      Map.of("StudyInstanceUID", "2.25.10", "SeriesInstanceUID", "2.25.11"),
                      "2.25.2",
                      Map.of(
                          "StudyInstanceUID",
                          "2.25.99",
                          "SeriesInstanceUID",
                          "2.25.11",
                          "PatientID",
                          "X-77"))));
      String find = "1.2.840.10008.5.1.4.1.2.2.1";
      assertThat(peer.negotiated).hasSize(2 + find.length() + 1).endsWith(1);
    }
  }

  @Test
  void elsewhereTheQuestionIsNotAsked() throws IOException {
    try (FindPeer peer = new FindPeer(false, PresenceQueryTest::archive)) {
      assertThat(((PresenceAnswer.Answered) ask(peer, HERE, MOVED)).found())
          .containsOnlyKeys("2.25.1");
      assertThat(peer.questions)
          .allMatch(question -> question.string(Tags.StudyInstanceUID).isPresent());
    }
  }

  /** An archive that takes the first UID of a list alone must be asked for the others too. */
  @Test
  void whatAListDoesNotBringIsAskedForByItself() throws IOException {
    Function<DataSet, FindPeer.Matches> firstOnly =
        question ->
            question.string(LEVEL).equals(Optional.of("STUDY"))
                ? new FindPeer.Matches(0, List.of())
                : new FindPeer.Matches(
                    0,
                    List.of(
                        new DataSet()
                            .put(
                                Tags.SOPInstanceUID,
                                question.strings(Tags.SOPInstanceUID).get(0))));
    try (FindPeer peer = new FindPeer(false, firstOnly)) {
      assertThat(((PresenceAnswer.Answered) ask(peer, HERE, MOVED)).found())
          .containsOnlyKeys("2.25.1", "2.25.2");
    }
  }

  /** One study at which it fails: the answers about the others count all the same. */
  @Test
  void aQuestionThatFailsLeavesItsOwnObjectsOpen() throws IOException {
    Instance other = new Instance("1.2.3", "2.25.3", "2.25.66", "2.25.67");
    Function<DataSet, FindPeer.Matches> failing =
        question ->
            names(question, Tags.StudyInstanceUID, "2.25.66")
                ? new FindPeer.Matches(0xC001, List.of())
                : archive(question);
    try (FindPeer peer = new FindPeer(false, failing)) {
      PresenceAnswer.Failed failed = (PresenceAnswer.Failed) ask(peer, HERE, MOVED, other);
      assertThat(failed.found()).containsOnlyKeys("2.25.1");
      assertThat(failed.open()).containsExactly("2.25.3");
      assertThat(failed.sessionOver()).isFalse();
      assertThat(failed.words()).isEqualTo("the question could not be worked on (status C001)");
    }
  }

  /**
   * An archive that answers by the hierarchy alone (PS3.4 C.4.1.2.2.1) and has the object in
   * another study of its patient, in the second of two series.
   */
  private static FindPeer.Matches hierarchical(DataSet question) {
    String study = question.string(Tags.StudyInstanceUID).orElse("");
    String series = question.string(Tags.SeriesInstanceUID).orElse("");
    DataSet found = new DataSet();
    switch (question.string(LEVEL).orElse("")) {
      case "STUDY" -> {
        if (!question.string(Tags.PatientID).equals(Optional.of("P1"))) {
          return new FindPeer.Matches(0, List.of());
        }
        found.put(Tags.StudyInstanceUID, "2.25.99").put(Tags.PatientID, "P1");
      }
      case "SERIES" -> {
        return new FindPeer.Matches(
            study.equals("2.25.99") ? 0 : 0xA900,
            List.of(
                new DataSet().put(Tags.SeriesInstanceUID, "2.25.31"),
                new DataSet().put(Tags.SeriesInstanceUID, "2.25.32")));
      }
      default -> {
        if (!study.equals("2.25.99") || !series.equals("2.25.32")) {
          return new FindPeer.Matches(0, List.of());
        }
        found.put(Tags.SOPInstanceUID, MOVED.sopInstanceUid());
      }
    }
    return new FindPeer.Matches(0, List.of(found));
  }

  @Test
  void whatWasFiledUnderAnotherStudyIsFoundLevelByLevelElsewhere() throws IOException {
    try (FindPeer peer = new FindPeer(false, PresenceQueryTest::hierarchical);
        ArchiveSession session = open(peer, Set.of())) {
      assertThat(session.lookElsewhere(List.of(new Sought(MOVED, "P1", "A-17"))))
          .isEqualTo(
              Map.of(
                  "2.25.2",
                  Map.of(
                      "StudyInstanceUID", "2.25.99",
                      "SeriesInstanceUID", "2.25.32",
                      "PatientID", "P1")));
      assertThat(peer.questions).hasSize(5); // by accession number, by patient, series, two of them
    }
  }

  @Test
  void lookingElsewhereEndsAfterSoManyQuestions() throws IOException {
    List<DataSet> many = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      many.add(
          new DataSet()
              .put(Tags.StudyInstanceUID, "2.25.9" + i)
              .put(Tags.SeriesInstanceUID, "2.25.8" + i));
    }
    try (FindPeer peer = new FindPeer(false, question -> new FindPeer.Matches(0, many));
        ArchiveSession session = open(peer, Set.of())) {
      assertThat(session.lookElsewhere(List.of(new Sought(MOVED, "P1", "A-17")))).isEmpty();
      assertThat(peer.questions).hasSize(200);
    }
  }

  /** Accession number is no key there; one of two studies can't be looked into. */
  @Test
  void aQuestionThatIsRefusedIsNotTheLast() throws IOException {
    Function<DataSet, FindPeer.Matches> picky =
        question -> {
          if (question.string(Tags.AccessionNumber).isPresent()) {
            return new FindPeer.Matches(0xA900, List.of());
          }
          FindPeer.Matches usual = hierarchical(question);
          if (!question.string(LEVEL).equals(Optional.of("STUDY"))) {
            return usual;
          }
          List<DataSet> studies = new ArrayList<>();
          studies.add(new DataSet().put(Tags.StudyInstanceUID, "2.25.98"));
          studies.addAll(usual.found());
          return new FindPeer.Matches(0, studies);
        };
    try (FindPeer peer = new FindPeer(false, picky);
        ArchiveSession session = open(peer, Set.of())) {
      assertThat(session.lookElsewhere(List.of(new Sought(MOVED, "P1", "A-17"))))
          .containsOnlyKeys("2.25.2");
      assertThat(session.isOver()).isFalse();
    }
  }

  /** PS3.4 C.2.2.2.4: in a value that is to match, * and ? stand for whatever there is. */
  @Test
  void aNumberWithWildCardsLeadsToNobodyElse() throws IOException {
    for (String number : List.of("P*", "P?")) {
      Function<DataSet, FindPeer.Matches> matching =
          question ->
              question.string(LEVEL).equals(Optional.of("STUDY"))
                  ? new FindPeer.Matches(
                      0,
                      List.of(
                          new DataSet()
                              .put(Tags.StudyInstanceUID, "2.25.66")
                              .put(Tags.PatientID, "P1"),
                          new DataSet().put(Tags.StudyInstanceUID, "2.25.67"),
                          new DataSet()
                              .put(Tags.StudyInstanceUID, "2.25.99")
                              .put(Tags.PatientID, number)))
                  : hierarchical(question);
      try (FindPeer peer = new FindPeer(false, matching);
          ArchiveSession session = open(peer, Set.of())) {
        assertThat(session.lookElsewhere(List.of(new Sought(MOVED, number, ""))))
            .as(number)
            .containsOnlyKeys("2.25.2");
        assertThat(peer.questions)
            .as("nobody else's studies were looked into")
            .noneMatch(question -> names(question, Tags.StudyInstanceUID, "2.25.66"))
            .noneMatch(question -> names(question, Tags.StudyInstanceUID, "2.25.67"));
      }
    }
  }

  /** An archive may answer with the number under which it joined two patients (common practice). */
  @Test
  void theArchivesOwnNumberForThePatientDoesNotHideTheObject() throws IOException {
    Function<DataSet, FindPeer.Matches> joined =
        question -> {
          FindPeer.Matches usual = hierarchical(question);
          if (question.string(LEVEL).equals(Optional.of("STUDY"))) {
            usual.found().forEach(study -> study.put(Tags.PatientID, "P-1-JOINED"));
          }
          return usual;
        };
    try (FindPeer peer = new FindPeer(false, joined);
        ArchiveSession session = open(peer, Set.of())) {
      assertThat(session.lookElsewhere(List.of(new Sought(MOVED, "P1", ""))))
          .containsOnlyKeys("2.25.2");
    }
  }

  /** PS3.5 6.4: a backslash would make two values of one. */
  @Test
  void aNumberWithABackslashIsNotAskedFor() throws IOException {
    try (FindPeer peer = new FindPeer(false, PresenceQueryTest::hierarchical);
        ArchiveSession session = open(peer, Set.of())) {
      assertThat(session.lookElsewhere(List.of(new Sought(MOVED, "P1\\P2", "A\\17")))).isEmpty();
      assertThat(peer.questions).isEmpty();
    }
  }
}
