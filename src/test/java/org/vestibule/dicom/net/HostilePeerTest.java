package org.vestibule.dicom.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.dicom.net.AssociationTest.ACCEPT;
import static org.vestibule.dicom.net.AssociationTest.ECHO;
import static org.vestibule.dicom.net.AssociationTest.WAIT;
import static org.vestibule.dicom.net.AssociationTest.refused;
import static org.vestibule.dicom.net.Laid.accept;
import static org.vestibule.dicom.net.Laid.accepted;
import static org.vestibule.dicom.net.Laid.answer;
import static org.vestibule.dicom.net.Laid.answerWithData;
import static org.vestibule.dicom.net.Laid.ascii;
import static org.vestibule.dicom.net.Laid.command;
import static org.vestibule.dicom.net.Laid.data;
import static org.vestibule.dicom.net.Laid.hex;
import static org.vestibule.dicom.net.Laid.join;
import static org.vestibule.dicom.net.Laid.pdu;
import static org.vestibule.dicom.net.Laid.us;
import static org.vestibule.dicom.net.Laid.value;
import static org.vestibule.dicom.net.ScriptedPeer.hang;
import static org.vestibule.dicom.net.ScriptedPeer.listen;
import static org.vestibule.dicom.net.ScriptedPeer.send;
import static org.vestibule.dicom.net.ScriptedPeer.take;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;

/** What no archive should do: each ends in words, soon, in bounded memory, with the abort due. */
@Timeout(60) // a guard against waiting for ever, not a measure
class HostilePeerTest {

  private static final Duration SHORT = Duration.ofMillis(400);
  private static final String ASK =
      ": check that host and port are those of a DICOM archive, and ask its maker";

  /** What stands where the answer to our request for an association is due. */
  static Stream<Arguments> instead() {
    return Stream.of(
        Arguments.of(
            "a web server",
            ascii("HTTP/1.1 400 Bad Request\r\n"),
            " sent bytes that are no DICOM (a PDU of type 72)" + ASK,
            1),
        Arguments.of(
            "TLS",
            hex("15 03 03 00 02 02 28"),
            " speaks TLS on this port but we were told to call it without" + ASK,
            1),
        Arguments.of(
            "four gigabytes announced",
            hex("02 00 FFFFFFFF"),
            " sent a PDU of 4294967295 bytes, more than the 65536 that we take" + ASK,
            6),
        Arguments.of(
            "data before an association",
            data(1, 3, answer(0x8030, 1, 0)),
            " sent a PDU of type 4 instead of the answer to our request for an association" + ASK,
            2),
        Arguments.of(
            "an answer that is cut",
            pdu(2, hex("0001")),
            " sent a PDU in which a part claims 2 bytes but only 0 are left" + ASK,
            6),
        Arguments.of(
            "an item longer than the PDU",
            pdu(2, hex("0001 0000"), new byte[64], hex("21 00 00FF 01")),
            " sent a PDU in which a part claims 255 bytes but only 1 are left" + ASK,
            6),
        Arguments.of(
            "another protocol version",
            pdu(2, hex("0002 0000"), new byte[64]),
            " speaks no version 1 of the protocol" + ASK,
            6),
        Arguments.of(
            "a syntax that was not offered",
            accept(16384, accepted(1, 0, "1.2.3")),
            " chose a transfer syntax that we did not offer: ask its maker",
            6),
        Arguments.of(
            "PDUs too short for anything",
            accept(7, accepted(1, 0, Laid.IMPLICIT)),
            " takes PDUs of 7 bytes only, fewer than any has" + ASK,
            6),
        Arguments.of("a rejection of the wrong length", pdu(3, new byte[2]), null, -1));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("instead")
  void insteadOfTheAssociation(String what, byte[] bytes, String words, int abort) {
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(bytes), listen())) {
      String sentence = refused(Association.open(peer.remote(WAIT), ECHO)).sentence();
      if (words == null) {
        assertThat(sentence).isEqualTo("a PDU of type 3 has 2 bytes instead of 4" + ASK);
        return;
      }
      assertThat(sentence).isEqualTo(peer.words() + words);
      assertThat(peer.received().get(1)).isEqualTo(pdu(7, new byte[] {0, 0, 2, (byte) abort}));
    }
  }

  /** What stands where the answer to our echo is due. */
  static Stream<Arguments> insteadOfAnEcho() {
    byte[] good = answer(0x8030, 1, 0);
    byte[] withData = answerWithData(0x8030, 1, 0);
    return Stream.of(
        Arguments.of(
            "a context that was not agreed",
            data(3, 3, good),
            " sent data in the presentation context 3, which was not agreed",
            6),
        Arguments.of(
            "a value of no bytes",
            pdu(4, hex("00000000")),
            " sent a PDU in which a part claims 1 bytes but only 0 are left",
            6),
        Arguments.of(
            "a value longer than its PDU",
            pdu(4, hex("7FFFFFFF 01 03")),
            " sent a PDU in which a part claims 2147483647 bytes but only 2 are left",
            6),
        Arguments.of(
            "a second acceptance",
            ACCEPT,
            " sent a PDU of type 2 instead of the answer to our echo",
            2),
        Arguments.of(
            "a data set before its command",
            data(1, 2, good),
            " mixed the fragments of two messages",
            6),
        Arguments.of(
            "a command where a data set is due",
            pdu(4, value(1, 3, withData), value(1, 3, withData)),
            " mixed the fragments of two messages",
            6),
        Arguments.of(
            "a command that lies about a length",
            data(1, 3, hex("0000 0001 FF000000 3080")),
            " sent a command that can't be read",
            6),
        Arguments.of(
            "an element of another group",
            data(1, 3, join(good, hex("0800 1800 00000000"))),
            " sent a command that can't be read",
            6),
        Arguments.of(
            "a command without a field",
            data(1, 3, command(us(0x0800, 0x0101))),
            " sent a command that can't be read",
            6),
        Arguments.of(
            "the answer to another message",
            data(1, 3, answer(0x8030, 2, 0)),
            " answered something that was not asked, instead of the answer to our echo",
            0),
        Arguments.of(
            "the answer to another service",
            data(1, 3, answer(0x8001, 1, 0)),
            " answered something that was not asked, instead of the answer to our echo",
            0),
        Arguments.of(
            "an answer without a status",
            data(1, 3, command(us(0x0100, 0x8030), us(0x0120, 1), us(0x0800, 0x0101))),
            " sent an answer without a status",
            0));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("insteadOfAnEcho")
  void insteadOfTheAnswer(String what, byte[] bytes, String words, int abort) {
    try (ScriptedPeer peer =
        ScriptedPeer.of(take(1), send(ACCEPT), take(1), send(bytes), listen())) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      Outcome.Refused<Answer> refused = refused(association.echo());
      assertThat(refused.sentence()).isEqualTo(peer.words() + words + ASK);
      assertThat(refused.kind()).isEqualTo(Outcome.Kind.REQUEST);
      assertThat(association.isOpen()).isFalse();
      assertThat(peer.received().get(2)).isEqualTo(pdu(7, new byte[] {0, 0, 2, (byte) abort}));
    }
  }

  @Test
  void silenceInsteadOfAnAssociationEnds() {
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), hang())) {
      Outcome.Refused<Association> refused = refused(Association.open(peer.remote(SHORT), ECHO));
      assertThat(refused.sentence())
          .isEqualTo(
              peer.words()
                  + " was silent too long: we waited for the answer to our request for an"
                  + " association: see its log; try again, or allow it more time in the settings");
      assertThat(refused.kind()).isEqualTo(Outcome.Kind.BUSY);
    }
  }

  @Test
  void silenceInsteadOfAnAnswerEnds() {
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(ACCEPT), take(1), hang())) {
      Association association = Association.open(peer.remote(SHORT), ECHO).orThrow();
      assertThat(refused(association.echo()).sentence())
          .startsWith(peer.words() + " was silent too long: we waited for the answer to our echo:");
    }
  }

  @Test
  void silenceInsteadOfAReleaseEnds() {
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(ACCEPT), take(1), hang())) {
      Association association = Association.open(peer.remote(SHORT), ECHO).orThrow();
      assertThat(refused(association.release()).sentence())
          .startsWith(
              peer.words() + " was silent too long: we waited for the answer to our release:");
    }
  }

  @Test
  void oneByteAtATimeForEverIsSilenceToo() {
    byte[] header = hex("04 00 00010000");
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(ACCEPT),
            take(1),
            ScriptedPeer.drip(header, new byte[1], Duration.ofMillis(20)))) {
      Association association = Association.open(peer.remote(SHORT), ECHO).orThrow();
      assertThat(refused(association.echo()).sentence())
          .startsWith(peer.words() + " was silent too long: we waited for the answer to our echo:");
    }
  }

  @Test
  void emptyFragmentsForEverEndToo() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1), send(ACCEPT), take(1), ScriptedPeer.flood(data(1, 1, new byte[0])))) {
      Association association = Association.open(peer.remote(SHORT), ECHO).orThrow();
      assertThat(refused(association.echo()).sentence())
          .startsWith(peer.words() + " was silent too long: we waited for the answer to our echo:");
    }
  }

  @Test
  void aMessageWithoutEndIsCut() {
    byte[] fragment = data(1, 0, new byte[60_000]);
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(ACCEPT),
            take(1),
            send(data(1, 3, answerWithData(0x8030, 1, 0))),
            ScriptedPeer.flood(fragment))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(refused(association.echo()).sentence())
          .isEqualTo(peer.words() + " sent a message of more than 8388608 bytes" + ASK);
    }
  }

  @Test
  void closingInsteadOfAnsweringIsSaidSo() {
    try (ScriptedPeer peer = ScriptedPeer.of(take(1))) {
      assertThat(refused(Association.open(peer.remote(WAIT), ECHO)).sentence())
          .isEqualTo(
              peer.words()
                  + " closed the connection instead of the answer to our request for an"
                  + " association: see its log; it may want TLS, or not know our title");
    }
  }

  @Test
  void halfClosingIsClosing() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(take(1), send(ACCEPT), take(1), ScriptedPeer.halfClose(), listen())) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(refused(association.echo()).sentence())
          .startsWith(peer.words() + " closed the connection instead of the answer to our echo:");
    }
  }

  @Test
  void aConnectionCutAtAnyByteOfTheAnswersIsSaidSo() {
    byte[] echo = data(1, 3, answer(0x8030, 1, 0));
    for (int length = 1; length < echo.length; length += 7) {
      byte[] part = java.util.Arrays.copyOf(echo, length);
      try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(ACCEPT), take(1), send(part))) {
        Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
        assertThat(refused(association.echo()).sentence())
            .isEqualTo(
                peer.words()
                    + " closed the connection in the middle of a PDU: see its log and the network;"
                    + " try again");
      }
    }
  }

  private static final List<Offer> FIND =
      List.of(new Offer(NetUids.STUDY_ROOT_FIND, List.of(Laid.IMPLICIT)));

  private static byte[] match(byte[] data) {
    return join(data(1, 3, answerWithData(0x8020, 1, 0xFF00)), data(1, 2, data));
  }

  /** Each answer in time, and no end of them: ten times the wait for one is enough for all. */
  @Test
  void answersThatDripForEverEnd() {
    byte[] one = match(Laid.implicit(0x10, 0x20, Laid.ascii("KITE")));
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(ACCEPT),
            ScriptedPeer.takeDataSet(),
            ScriptedPeer.drip(one, one, Duration.ofMillis(20)))) {
      Association association = Association.open(peer.remote(SHORT), FIND).orThrow();
      Outcome.Refused<Found> refused =
          refused(association.find(NetUids.STUDY_ROOT_FIND, new DataSet(), 1_000_000));
      assertThat(refused.sentence())
          .isEqualTo(
              peer.words()
                  + " was silent too long: we waited for the answer to our query: see its log; try"
                  + " again, or allow it more time in the settings");
      assertThat(refused.kind()).isEqualTo(Outcome.Kind.BUSY);
    }
  }

  @Test
  void answersOfMoreBytesThanAnyQueryBringsEnd() {
    byte[] fragments = join(data(1, 0, new byte[60_000]), data(1, 0, new byte[60_000]));
    byte[] large =
        join(
            data(1, 3, answerWithData(0x8020, 1, 0xFF00)),
            data(1, 0, join(Laid.little(0x7FE0, 2), Laid.little(0x10, 2), Laid.little(180_000, 4))),
            fragments,
            data(1, 2, new byte[60_000]));
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1), send(ACCEPT), ScriptedPeer.takeDataSet(), ScriptedPeer.flood(large))) {
      Association association = Association.open(peer.remote(WAIT), FIND).orThrow();
      assertThat(
              refused(association.find(NetUids.STUDY_ROOT_FIND, new DataSet(), 1_000_000))
                  .sentence())
          .isEqualTo("the answers to our query have more than 33554432 bytes" + ASK);
    }
  }

  /** Whoever asks us something again and again does not make us wait longer for its answer. */
  @Test
  void questionsInsteadOfTheAnswerEnd() {
    byte[] echo =
        data(
            1,
            3,
            command(
                Laid.ui(0x0002, "1.2.840.10008.1.1"),
                us(0x0100, 0x0030),
                us(0x0110, 7),
                us(0x0800, 0x0101)));
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1), send(ACCEPT), take(1), ScriptedPeer.drip(echo, echo, Duration.ofMillis(20)))) {
      Association association = Association.open(peer.remote(SHORT), ECHO).orThrow();
      assertThat(refused(association.echo()).sentence())
          .startsWith(peer.words() + " was silent too long: we waited for the answer to our echo:");
    }
  }

  /** Spoilt bytes never give anything but an outcome. */
  @Test
  void noiseGivesOutcomesOnly() {
    long seed = 20261;
    Random random = new Random(seed);
    byte[] both = join(ACCEPT, data(1, 3, answer(0x8030, 1, 0)));
    for (int round = 0; round < 150; round++) {
      byte[] spoilt = both.clone();
      for (int i = random.nextInt(4); i >= 0; i--) {
        spoilt[random.nextInt(spoilt.length)] = (byte) random.nextInt(256);
      }
      try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(spoilt))) {
        Outcome<Answer> outcome =
            Association.open(peer.remote(WAIT), ECHO)
                .then(
                    association -> {
                      Outcome<Answer> answer = association.echo();
                      association.abort();
                      return answer;
                    });
        assertThat(outcome).as("seed " + seed + " round " + round).isNotNull();
      }
    }
  }
}
