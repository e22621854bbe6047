package org.vestibule.forward.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.RunningPeer;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.net.Answer;
import org.vestibule.dicom.net.Found;

/** What a worklist may answer besides what it was asked. */
class OddAnswersTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 12);
  private static final WorklistRules RULES = rules("CHAIR1", "XC", 104);

  @Test
  void aWholeAnswerIsRead() {
    WorklistEntry entry = answered(answer(step())).entries().get(0);
    assertThat(entry.patientId()).isEqualTo("P1");
    assertThat(entry.name()).as("carets at the end mean nothing").isEqualTo("Tallgrass^Orla");
    assertThat(entry.start()).isEqualTo(LocalDateTime.of(2026, 3, 12, 9, 0));
    assertThat(entry.codes()).extracting(code -> code.value()).containsExactly("ORTHO8");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "0020000D | -              | no study UID",
        "0020000D | 1.02.3         | a study UID that is none",
        "00100020 | -              | no patient number",
        "00100010 | ^^^            | no patient name",
        "00080050 | 12345678901234567 | a accession number that DICOM does not allow"
      })
  void whatAnOrderCannotDoWithoutIsTold(String tag, String value, String fault) {
    DataSet answer = answer(step());
    int number = Integer.parseUnsignedInt(tag, 16);
    if (value == null) {
      answer.putEmpty(number);
    } else {
      answer.put(number, value);
    }
    WorklistAnswer read = answered(answer);
    assertThat(read.entries()).isEmpty();
    assertThat(read.oddities())
        .containsExactly(
            "an order of the worklist can't be used: it has "
                + fault
                + ": have it put right in the system that gives the orders");
  }

  @Test
  void aStepWithoutATimeIsTold() {
    assertThat(answered(answer(step().putEmpty(0x00400003))).oddities())
        .singleElement()
        .asString()
        .contains("no start date and time");
    assertThat(answered(answer(step()).putEmpty(0x00400100)).oddities())
        .singleElement()
        .asString()
        .contains("no scheduled step");
  }

  /** A worklist that ignores what it was asked for files nobody's orders under this day. */
  @Test
  void otherDaysStationsAndModalitiesArePassedOver() {
    WorklistAnswer read =
        answered(
            answer(step()),
            answer(step().put(0x00400002, "20260313")),
            answer(step().put(0x00400001, "CHAIR2")),
            answer(step().put(Tags.Modality, "CT")));
    assertThat(read.entries()).hasSize(1);
    assertThat(read.others()).isEqualTo(3);
  }

  @Test
  void aFailureIsARefusalInWords() {
    Answer failed =
        new Answer(Answer.Kind.FAILURE, 0xA700, "out of resources", false, "", List.of());
    assertThat(Worklist.answered(new Found(List.of(), false, failed), RULES, DAY))
        .isEqualTo(
            Outcome.refused(
                "the worklist refused the query: out of resources",
                "have its administrator look for the reason; nothing was taken over"));
  }

  @Test
  void nobodyThereIsARefusal() throws Exception {
    int port = RunningPeer.freePort();
    Outcome<WorklistAnswer> asked = Worklist.ask(rules("", "", port), DAY, Clock.systemUTC());
    assertThat(((Outcome.Refused<WorklistAnswer>) asked).reason())
        .isEqualTo("nothing takes connections for WORKLIST at localhost:" + port);
  }

  /** Matching and return keys of PS3.4 Table K.6-1. */
  @Test
  void theQuestionAsksByDayStationAndModality() {
    DataSet question = Worklist.question(RULES, DAY);
    DataSet step = question.item(0x00400100).orElseThrow();
    assertThat(step.string(0x00400002)).contains("20260312");
    assertThat(step.string(0x00400001)).contains("CHAIR1");
    assertThat(step.string(Tags.Modality)).contains("XC");
    assertThat(question.contains(Tags.StudyInstanceUID)).isTrue();
    assertThat(question.contains(Tags.IssuerOfPatientID)).isTrue();
  }

  static WorklistRules rules(String station, String modality, int port) {
    return new WorklistRules(
        "localhost",
        port,
        "WORKLIST",
        "VESTIBULE",
        Optional.empty(),
        station,
        modality,
        java.time.Duration.ofMinutes(45));
  }

  private static WorklistAnswer answered(DataSet... answers) {
    Answer success = new Answer(Answer.Kind.SUCCESS, 0, "done", false, "", List.of());
    return Worklist.answered(new Found(List.of(answers), false, success), RULES, DAY).orThrow();
  }

  private static DataSet step() {
    return new DataSet()
        .put(Tags.Modality, "XC")
        .put(0x00400001, "CHAIR1")
        .put(0x00400002, "20260312")
        .put(0x00400003, "0900")
        .put(Tags.ScheduledProcedureStepID, "S1");
  }

  private static DataSet answer(DataSet step) {
    return new DataSet()
        .put(Tags.AccessionNumber, "ACC71")
        .put(Tags.PatientName, "Tallgrass^Orla^^^")
        .put(Tags.PatientID, "P1")
        .put(Tags.StudyInstanceUID, "2.25.4711")
        .put(
            Tags.RequestedProcedureCodeSequence,
            new DataSet()
                .put(Tags.CodeValue, "ORTHO8")
                .put(Tags.CodingSchemeDesignator, "99MILL")
                .put(Tags.CodeMeaning, "Eight views"))
        .put(0x00400100, step);
  }
}
