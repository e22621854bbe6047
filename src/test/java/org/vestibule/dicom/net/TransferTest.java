package org.vestibule.dicom.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.dicom.net.AssociationTest.WAIT;
import static org.vestibule.dicom.net.AssociationTest.refused;
import static org.vestibule.dicom.net.Laid.accept;
import static org.vestibule.dicom.net.Laid.accepted;
import static org.vestibule.dicom.net.Laid.answer;
import static org.vestibule.dicom.net.Laid.answerWithData;
import static org.vestibule.dicom.net.Laid.ascii;
import static org.vestibule.dicom.net.Laid.command;
import static org.vestibule.dicom.net.Laid.data;
import static org.vestibule.dicom.net.Laid.element;
import static org.vestibule.dicom.net.Laid.hex;
import static org.vestibule.dicom.net.Laid.implicit;
import static org.vestibule.dicom.net.Laid.join;
import static org.vestibule.dicom.net.Laid.pdu;
import static org.vestibule.dicom.net.Laid.ui;
import static org.vestibule.dicom.net.Laid.us;
import static org.vestibule.dicom.net.Laid.value;
import static org.vestibule.dicom.net.ScriptedPeer.hang;
import static org.vestibule.dicom.net.ScriptedPeer.listen;
import static org.vestibule.dicom.net.ScriptedPeer.send;
import static org.vestibule.dicom.net.ScriptedPeer.take;
import static org.vestibule.dicom.net.ScriptedPeer.takeDataSet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Objects, questions and storage commitment, against a peer that does what a script says. */
@Timeout(60) // a guard against waiting for ever, not a measure
class TransferTest {

  private static final String UID = "2.25.900";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(longs = {8, 57, 4096, 16384, 65536, 131_073, 0xFFFFFFFFL, 0})
  void cutsAnObjectToWhatTheOtherSideTakes(long mostBytes) throws IOException {
    int pictureBytes = mostBytes == 8 ? 2_000 : 600_000;
    Path path = Photographs.write(folder, UID, pictureBytes);
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(mostBytes, accepted(1, 0, Photographs.JPEG))),
            takeDataSet(),
            send(data(1, 3, answer(0x8001, 1, 0))),
            listen())) {
      FileToSend file = FileToSend.of(path);
      try (Association association =
          Association.open(peer.remote(WAIT), List.of(Offer.of(file))).orThrow()) {
        Answer answer = association.store(file).orThrow();
        assertThat(answer.sentence()).isEqualTo("done (status 0000)");
        association.abort();
      }
      List<byte[]> sent = peer.received();
      byte[] command = content(sent.subList(1, sent.size() - 1), 1);
      // PS3.7 Table 9.3-1
      assertThat(command)
          .isEqualTo(
              command(
                  ui(0x0002, Photographs.PHOTOGRAPH),
                  us(0x0100, 0x0001),
                  us(0x0110, 1),
                  us(0x0700, 0),
                  us(0x0800, 1),
                  ui(0x1000, UID)));
      byte[] whole = Files.readAllBytes(path);
      assertThat(content(sent.subList(1, sent.size() - 1), 0))
          .isEqualTo(Arrays.copyOfRange(whole, (int) file.dataStart(), whole.length));
      for (byte[] each : sent.subList(1, sent.size())) {
        assertThat(each.length - 6L).isLessThanOrEqualTo(mostBytes == 0 ? 1 << 18 : mostBytes);
        assertThat(each.length % 2).isZero();
      }
    }
  }

  @Test
  void aShortObjectMayBeFollowedByALongerOneOfFewFragments() throws IOException {
    FileToSend first = FileToSend.of(Photographs.write(folder, UID, 2_000));
    Path path = Photographs.write(folder, UID + ".1", 40_000);
    FileToSend second = FileToSend.of(path);
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(16384, accepted(1, 0, Photographs.JPEG))),
            takeDataSet(),
            send(data(1, 3, answer(0x8001, 1, 0))),
            takeDataSet(),
            send(data(1, 3, answer(0x8001, 2, 0))),
            listen())) {
      Association association =
          Association.open(peer.remote(WAIT), List.of(Offer.of(first))).orThrow();
      assertThat(association.store(first).orThrow().isDone()).isTrue();
      assertThat(association.store(second).orThrow().isDone()).isTrue();
      association.abort();
      List<byte[]> sent = peer.received();
      int begin = 1;
      while (sent.get(begin)[11] != 2) {
        begin++;
      }
      byte[] whole = Files.readAllBytes(path);
      assertThat(content(sent.subList(begin + 1, sent.size() - 1), 0))
          .isEqualTo(Arrays.copyOfRange(whole, (int) second.dataStart(), whole.length));
    }
  }

  /** The bytes of all command fragments (kind 1) or data set fragments (kind 0). */
  private static byte[] content(List<byte[]> pdus, int kind) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] pdu : pdus) {
      if ((pdu[11] & 1) == kind) {
        out.write(pdu, 12, pdu.length - 12);
      }
    }
    return out.toByteArray();
  }

  /** PS3.4 B.2.3, PS3.7 annex C. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0000|SUCCESS|false|done (status 0000)",
        "A700|FAILURE|true|out of resources, such as a full disk (status A700)",
        "A7FF|FAILURE|true|out of resources, such as a full disk (status A7FF)",
        "A900|FAILURE|false|the object does not match its kind, or belongs to a patient or study that it knows otherwise (status A900)",
        "C123|FAILURE|false|the object was not understood (status C123)",
        "B000|WARNING|false|kept, but some attributes were changed to its own values (status B000)",
        "B006|WARNING|false|kept, but some elements were dropped (status B006)",
        "B007|WARNING|false|kept, though it finds that the object does not match its kind (status B007)",
        "0110|FAILURE|true|failed while working on it (status 0110)",
        "0111|FAILURE|false|an instance with this UID is there already (status 0111)",
        "0122|FAILURE|false|this kind of object is not taken there (status 0122)",
        "0124|FAILURE|false|we are not allowed to do this (status 0124)",
        "A123|FAILURE|true|refused for a reason of its own (status A123)",
        "B123|WARNING|false|done with a warning of its own (status B123)",
        "0299|FAILURE|true|failed for a reason of its own (status 0299)",
        "1234|FAILURE|true|answered with an unknown status (status 1234)",
      })
  void saysWhatAStatusMeans(String status, Answer.Kind kind, boolean again, String words)
      throws IOException {
    Answer answer = storeAnswered(answer(0x8001, 1, Integer.parseInt(status, 16)));
    assertThat(answer.sentence()).isEqualTo(words);
    assertThat(answer.kind()).isEqualTo(kind);
    assertThat(answer.again()).isEqualTo(again);
    assertThat(answer.isDone()).isEqualTo(kind != Answer.Kind.FAILURE);
  }

  @Test
  void keepsWhatAnArchiveSaysItChanged() throws IOException {
    Answer answer =
        storeAnswered(
            command(
                us(0x0100, 0x8001),
                us(0x0120, 1),
                us(0x0800, 0x0101),
                us(0x0900, 0xB000),
                element(0x0901, hex("10002000 10001000")),
                element(0x0902, ascii("patient ID was mapped"))));
    assertThat(answer.offending()).containsExactly("00100020", "00100010");
    assertThat(answer.comment()).isEqualTo("patient ID was mapped");
    assertThat(answer.sentence()).doesNotContain("mapped");
  }

  private Answer storeAnswered(byte[] command) throws IOException {
    FileToSend file = FileToSend.of(Photographs.write(folder, UID, 100));
    try (ScriptedPeer peer =
            ScriptedPeer.of(
                take(1),
                send(accept(16384, accepted(1, 0, Photographs.JPEG))),
                takeDataSet(),
                send(data(1, 3, command)),
                take(1),
                send(hex("06 00 00000004 00000000")));
        Association association =
            Association.open(peer.remote(WAIT), List.of(Offer.of(file))).orThrow()) {
      return association.store(file).orThrow();
    }
  }

  @Test
  void whoStopsTakingIsSilentTooLong() throws IOException {
    FileToSend file = FileToSend.of(Photographs.write(folder, UID, 40_000_000));
    try (ScriptedPeer peer =
        ScriptedPeer.of(take(1), send(accept(0, accepted(1, 0, Photographs.JPEG))), hang())) {
      Association association =
          Association.open(peer.remote(Duration.ofMillis(400)), List.of(Offer.of(file))).orThrow();
      assertThat(refused(association.store(file)).sentence())
          .isEqualTo(
              peer.words()
                  + " was silent too long: we waited for it to take our data: see its log; try"
                  + " again, or allow it more time in the settings");
    }
  }

  @Test
  void whoGoesInTheMiddleCutsTheConnection() throws IOException {
    FileToSend file = FileToSend.of(Photographs.write(folder, UID, 40_000_000));
    try (ScriptedPeer peer =
        ScriptedPeer.of(take(1), send(accept(0, accepted(1, 0, Photographs.JPEG))), take(3))) {
      Association association =
          Association.open(peer.remote(WAIT), List.of(Offer.of(file))).orThrow();
      Outcome.Refused<Answer> refused = refused(association.store(file));
      assertThat(refused.sentence())
          .isEqualTo(
              "the connection to "
                  + peer.words()
                  + " was cut while we waited for it to take our data: see its log and the"
                  + " network; try again");
      assertThat(refused.kind()).isEqualTo(Outcome.Kind.BUSY);
    }
  }

  @Test
  void aFileThatWasCutSinceIsSaidSoAndTheOtherSideHearsAnAbort() throws IOException {
    Path path = Photographs.write(folder, UID, 100_000);
    FileToSend file = FileToSend.of(path);
    Files.write(path, Arrays.copyOf(Files.readAllBytes(path), 50_000));
    try (ScriptedPeer peer =
        ScriptedPeer.of(take(1), send(accept(16384, accepted(1, 0, Photographs.JPEG))), listen())) {
      Association association =
          Association.open(peer.remote(WAIT), List.of(Offer.of(file))).orThrow();
      assertThat(refused(association.store(file)).sentence())
          .isEqualTo(
              "the file became shorter or unreadable while it was sent: check the disk, and run"
                  + " verify");
      List<byte[]> sent = peer.received();
      assertThat(sent.get(sent.size() - 1)).isEqualTo(pdu(7, new byte[4 - 2], hex("0200")));
    }
  }

  private static final List<Offer> FIND =
      List.of(new Offer(NetUids.STUDY_ROOT_FIND, List.of(Laid.IMPLICIT)));

  private static byte[] match(String id) {
    return join(
        data(1, 3, answerWithData(0x8020, 1, 0xFF00)), data(1, 2, implicit(0x10, 0x20, ascii(id))));
  }

  @Test
  void asksAndTakesTheAnswers() {
    byte[] last = data(1, 3, answer(0x8020, 1, 0));
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(16384, accepted(1, 0, Laid.IMPLICIT))),
            takeDataSet(),
            send(match("KITE1 "), match("KITE2 "), last),
            listen())) {
      Association association = Association.open(peer.remote(WAIT), FIND).orThrow();
      Found found =
          association
              .find(NetUids.STUDY_ROOT_FIND, new DataSet().put(Tags.PatientID, "KITE*"), 10)
              .orThrow();
      assertThat(found.answers())
          .extracting(answer -> answer.string(Tags.PatientID).orElse(""))
          .containsExactly("KITE1", "KITE2");
      assertThat(found.more()).isFalse();
      assertThat(found.last().kind()).isEqualTo(Answer.Kind.SUCCESS);
      association.abort();
      // PS3.7 Table 9.3-3, and the question in implicit VR
      assertThat(content(peer.received().subList(1, 3), 1))
          .isEqualTo(
              command(
                  ui(0x0002, NetUids.STUDY_ROOT_FIND),
                  us(0x0100, 0x0020),
                  us(0x0110, 1),
                  us(0x0700, 0),
                  us(0x0800, 1)));
      assertThat(content(peer.received().subList(1, 3), 0))
          .isEqualTo(implicit(0x10, 0x20, ascii("KITE* ")));
    }
  }

  @Test
  void stopsAQueryThatFindsTooMuch() {
    byte[] cancelled = data(1, 3, answer(0x8020, 1, 0xFE00));
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(16384, accepted(1, 0, Laid.IMPLICIT))),
            takeDataSet(),
            send(match("A "), match("B "), match("C "), match("D ")),
            take(1),
            send(match("E "), cancelled),
            listen())) {
      Association association = Association.open(peer.remote(WAIT), FIND).orThrow();
      Found found = association.find(NetUids.STUDY_ROOT_FIND, new DataSet(), 2).orThrow();
      assertThat(found.answers()).hasSize(2);
      assertThat(found.more()).isTrue();
      assertThat(found.last().kind()).isEqualTo(Answer.Kind.CANCELLED);
      assertThat(association.isOpen()).isTrue();
      association.abort();
      // PS3.7 Table 9.3-5
      List<byte[]> sent = peer.received();
      assertThat(sent.get(sent.size() - 2))
          .isEqualTo(data(1, 3, command(us(0x0100, 0x0FFF), us(0x0120, 1), us(0x0800, 0x0101))));
    }
  }

  @Test
  void aRefusedQueryIsAnAnswer() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(16384, accepted(1, 0, Laid.IMPLICIT))),
            takeDataSet(),
            send(data(1, 3, answer(0x8020, 1, 0xA900))),
            listen())) {
      Association association = Association.open(peer.remote(WAIT), FIND).orThrow();
      Found found = association.find(NetUids.STUDY_ROOT_FIND, new DataSet(), 2).orThrow();
      assertThat(found.last().sentence())
          .isEqualTo("the question does not match the kind of query (status A900)");
      association.abort();
    }
  }

  private static final List<Offer> COMMIT =
      List.of(new Offer(NetUids.STORAGE_COMMITMENT_PUSH, List.of(Laid.IMPLICIT)));

  @Test
  void asksForCommitmentAndTakesTheReport() {
    byte[] report = Laid.report("2.25.5 ", "2.25.6 ", "2.25.7 ", 0x0112);
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(16384, accepted(1, 0, Laid.IMPLICIT))),
            takeDataSet(),
            // the report may come before the answer to the request, or after it
            send(
                data(1, 3, answer(0x8130, 1, 0)),
                pdu(4, value(1, 3, Laid.eventReport(77, 2)), value(1, 0, hex(""))),
                data(1, 2, report)),
            listen())) {
      List<CommitmentReport> reports = new ArrayList<>();
      Association association = Association.open(peer.remote(WAIT), COMMIT, reports::add).orThrow();
      Answer answer =
          association
              .requestCommitment("2.25.5", List.of(new InstanceReference("1.2.3", "2.25.6")))
              .orThrow();
      assertThat(answer.kind()).isEqualTo(Answer.Kind.SUCCESS);
      assertThat(association.serveOne(WAIT)).isEqualTo(Outcome.done(true));
      CommitmentReport got = reports.get(0);
      assertThat(got.transactionUid()).isEqualTo("2.25.5");
      assertThat(got.kept()).containsExactly(new InstanceReference("1.2.3", "2.25.6"));
      assertThat(got.failed().get(0).instance())
          .isEqualTo(new InstanceReference("1.2.3", "2.25.7"));
      assertThat(got.failed().get(0).why().sentence())
          .isEqualTo("the instance is not there (status 0112)");
      assertThat(got.retrieveTitle()).contains("KEEPER");
      association.abort();
      List<byte[]> sent = peer.received();
      // PS3.7 Table 10.3-5 and PS3.4 Table J.3-1
      assertThat(content(sent.subList(1, 3), 1))
          .isEqualTo(
              command(
                  ui(0x0003, "1.2.840.10008.1.20.1"),
                  us(0x0100, 0x0130),
                  us(0x0110, 1),
                  us(0x0800, 1),
                  ui(0x1001, "1.2.840.10008.1.20.1.1"),
                  us(0x1008, 1)));
      assertThat(content(sent.subList(1, 3), 0))
          .isEqualTo(
              join(
                  implicit(8, 0x1195, ascii("2.25.5")),
                  implicit(
                      8,
                      0x1199,
                      implicit(
                          0xFFFE,
                          0xE000,
                          join(
                              implicit(8, 0x1150, ascii("1.2.3")),
                              implicit(8, 0x1155, ascii("2.25.6")))))));
      // PS3.7 Table 10.3-2
      assertThat(sent.get(3))
          .isEqualTo(
              data(
                  1,
                  3,
                  command(
                      ui(0x0002, "1.2.840.10008.1.20.1"),
                      us(0x0100, 0x8100),
                      us(0x0120, 77),
                      us(0x0800, 0x0101),
                      us(0x0900, 0),
                      ui(0x1000, "1.2.840.10008.1.20.1.1"),
                      us(0x1002, 2))));
    }
  }

  @Test
  void aReportThatDoesNotComeLeavesTheAssociationAsItWas() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(16384, accepted(1, 0, Laid.IMPLICIT))),
            take(1),
            send(hex("06 00 00000004 00000000")))) {
      Association association = Association.open(peer.remote(WAIT), COMMIT).orThrow();
      assertThat(association.serveOne(Duration.ofMillis(50))).isEqualTo(Outcome.done(false));
      assertThat(association.release()).isEqualTo(Outcome.done(true));
    }
  }

  @Test
  void aReportThatCannotBeReadIsAnsweredAsFailed() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(accept(16384, accepted(1, 0, Laid.IMPLICIT))),
            send(data(1, 3, Laid.eventReport(9, 1)), data(1, 2, hex("0800 9911 FF000000"))),
            listen())) {
      Association association = Association.open(peer.remote(WAIT), COMMIT).orThrow();
      assertThat(association.serveOne(WAIT)).isEqualTo(Outcome.done(true));
      association.abort();
      assertThat(peer.received().get(1)).containsSequence(hex("0000 0009 02000000 1001"));
    }
  }
}
