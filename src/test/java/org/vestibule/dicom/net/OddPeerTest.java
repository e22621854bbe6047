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
import static org.vestibule.dicom.net.Laid.element;
import static org.vestibule.dicom.net.Laid.hex;
import static org.vestibule.dicom.net.Laid.implicit;
import static org.vestibule.dicom.net.Laid.item;
import static org.vestibule.dicom.net.Laid.join;
import static org.vestibule.dicom.net.Laid.little;
import static org.vestibule.dicom.net.Laid.pdu;
import static org.vestibule.dicom.net.Laid.ui;
import static org.vestibule.dicom.net.Laid.us;
import static org.vestibule.dicom.net.Laid.value;
import static org.vestibule.dicom.net.ScriptedPeer.listen;
import static org.vestibule.dicom.net.ScriptedPeer.send;
import static org.vestibule.dicom.net.ScriptedPeer.take;
import static org.vestibule.dicom.net.ScriptedPeer.takeDataSet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** What an archive seldom does and may do: odd, allowed by the standard, and not to stop us. */
@Timeout(60) // a guard against waiting for ever, not a measure
class OddPeerTest {

  private static final byte[] RELEASED = hex("06 00 00000004 00000000");

  /** An acceptance whose user information holds more, in an order of its own. */
  private static byte[] acceptWith(byte[]... userItems) {
    byte[] plain = ACCEPT;
    int user = plain.length - join(item(0x51, new byte[4]), item(0x52, ascii("1.2.3.4"))).length;
    return pdu(2, Arrays.copyOfRange(plain, 6, user - 4), item(0x50, userItems));
  }

  /** PS3.8 9.3.1 and annex D.2: items that are not known are passed over. */
  static Stream<Arguments> acceptances() {
    byte[] most = item(0x51, Laid.big(16384, 4));
    byte[] name = item(0x52, ascii("1.2.3.4"));
    return Stream.of(
        Arguments.of(
            "items of types nobody knows", acceptWith(item(0x7E, new byte[9]), most, name)),
        Arguments.of(
            "the longest item behind", acceptWith(most, name, item(0x60, new byte[30000]))),
        Arguments.of("an answer about identity", acceptWith(most, name, item(0x59, hex("0000")))),
        Arguments.of("no largest PDU", acceptWith(name)),
        Arguments.of(
            "an item of its own among the contexts",
            accept(16384, item(0x77, ascii("odd")), accepted(1, 0, Laid.IMPLICIT))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("acceptances")
  void anAcceptanceMayHoldMore(String what, byte[] acceptance) {
    echoes(acceptance, data(1, 3, answer(0x8030, 1, 0)));
  }

  private static void echoes(byte[] acceptance, byte[] answer) {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1), send(acceptance), take(1), send(answer), take(1), send(RELEASED))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(association.echo().orThrow().sentence()).isEqualTo("done (status 0000)");
      assertThat(association.release()).isEqualTo(Outcome.done(true));
    }
  }

  /** PS3.8 annex E.1 (any fragments, any PDUs), PS3.7 9.3.5.2 and annex E.1 (more elements). */
  static Stream<Arguments> echoAnswers() {
    byte[] good = answer(0x8030, 1, 0);
    byte[][] one = new byte[good.length][];
    byte[][] values = new byte[good.length][];
    for (int i = 0; i < good.length; i++) {
      byte[] piece = {good[i]};
      int header = i == good.length - 1 ? 3 : 1;
      one[i] = data(1, header, piece);
      values[i] = value(1, header, piece);
    }
    byte[] elements = Arrays.copyOfRange(good, 12, good.length);
    byte[] odd = Arrays.copyOf(good, 13);
    byte[] rest = Arrays.copyOfRange(good, 13, good.length);
    return Stream.of(
        Arguments.of("one byte in each PDU", join(one)),
        Arguments.of("one byte in each value of one PDU", pdu(4, values)),
        Arguments.of("cut at an odd byte", join(data(1, 1, odd), data(1, 3, rest))),
        Arguments.of("nothing in the last", join(data(1, 1, good), data(1, 3, new byte[0]))),
        Arguments.of("reserved bits", data(1, 0xFF, good)),
        Arguments.of("no group length", data(1, 3, elements)),
        Arguments.of(
            "a group length that is wrong",
            data(1, 3, join(element(0, little(4711, 4)), elements))),
        Arguments.of(
            "more elements",
            data(
                1,
                3,
                command(
                    ui(0x0002, NetUids.VERIFICATION),
                    us(0x0100, 0x8030),
                    us(0x0120, 1),
                    us(0x0800, 0x0101),
                    us(0x0900, 0),
                    element(0x0902, ascii("all is well")),
                    element(0x5180, ascii("retired")),
                    element(0xFFFE, new byte[20])))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("echoAnswers")
  void anAnswerMayComeInAnyPieces(String what, byte[] answer) {
    echoes(ACCEPT, answer);
  }

  /**
   * PS3.4 C.4.1.1.4: FF01 says that a key was not understood, and the match counts all the same.
   */
  @Test
  void bothKindsOfPendingAreMatches() {
    List<Offer> find = List.of(new Offer(NetUids.STUDY_ROOT_FIND, List.of(Laid.IMPLICIT)));
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(ACCEPT),
            takeDataSet(),
            send(match(0xFF00, "A "), match(0xFF01, "B "), data(1, 3, answer(0x8020, 1, 0))),
            listen())) {
      Association association = Association.open(peer.remote(WAIT), find).orThrow();
      Found found = association.find(NetUids.STUDY_ROOT_FIND, new DataSet(), 10).orThrow();
      assertThat(found.answers())
          .extracting(answer -> answer.string(Tags.PatientID).orElse(""))
          .containsExactly("A", "B");
      association.abort();
    }
  }

  private static byte[] match(int status, String id) {
    return join(
        data(1, 3, answerWithData(0x8020, 1, status)), data(1, 2, implicit(0x10, 0x20, ascii(id))));
  }

  /** PS3.4 Table J.3-2: a report of failures alone has no sequence of what is kept. */
  @Test
  void aReportOfFailuresAloneIsTaken() {
    byte[] failed =
        join(
            implicit(8, 0x1150, ascii("1.2.3")),
            implicit(8, 0x1155, ascii("2.25.7 ")),
            implicit(8, 0x1197, little(0x0131, 2)));
    byte[] report =
        join(
            implicit(8, 0x1195, ascii("2.25.5 ")),
            implicit(8, 0x1198, implicit(0xFFFE, 0xE000, failed)));
    List<Offer> commit =
        List.of(new Offer(NetUids.STORAGE_COMMITMENT_PUSH, List.of(Laid.IMPLICIT)));
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(ACCEPT),
            send(data(1, 3, Laid.eventReport(9, 2)), data(1, 2, report)),
            listen())) {
      List<CommitmentReport> reports = new ArrayList<>();
      Association association = Association.open(peer.remote(WAIT), commit, reports::add).orThrow();
      assertThat(association.serveOne(WAIT)).isEqualTo(Outcome.done(true));
      association.abort();
      assertThat(reports.get(0).kept()).isEmpty();
      assertThat(reports.get(0).failed())
          .extracting(failure -> failure.instance())
          .containsExactly(new InstanceReference("1.2.3", "2.25.7"));
    }
  }

  /** PS3.8 9.2, state 7: whoever breaks off while the end is asked for has ended it too. */
  @Test
  void anAbortInsteadOfTheEndIsSaidSo() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(take(1), send(ACCEPT), take(1), send(hex("07 00 00000004 00000200")))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(refused(association.release()).sentence())
          .startsWith(peer.words() + " broke the association off: ");
      assertThat(association.isOpen()).isFalse();
    }
  }
}
