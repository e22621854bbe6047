package org.vestibule.dicom.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.dicom.net.Laid.accept;
import static org.vestibule.dicom.net.Laid.accepted;
import static org.vestibule.dicom.net.Laid.answer;
import static org.vestibule.dicom.net.Laid.data;
import static org.vestibule.dicom.net.Laid.hex;
import static org.vestibule.dicom.net.Laid.pdu;
import static org.vestibule.dicom.net.ScriptedPeer.listen;
import static org.vestibule.dicom.net.ScriptedPeer.send;
import static org.vestibule.dicom.net.ScriptedPeer.take;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;

/** Associations that go well, byte by byte, and each way in which the other side ends one. */
class AssociationTest {

  static final Duration WAIT = Duration.ofSeconds(5);
  static final List<Offer> ECHO = List.of(new Offer(NetUids.VERIFICATION, List.of(Laid.IMPLICIT)));
  static final byte[] ACCEPT = accept(16384, accepted(1, 0, Laid.IMPLICIT));

  /** PS3.8 Table 9-11 and D.1-1, PS3.7 Tables D.3-1 and D.3-3, by hand. */
  private static final String REQUEST =
      """
      01 00 000000DC
      0001 0000
      41524348495645202020202020202020
      56455354494255 4C45 20202020202020
      0000000000000000000000000000000000000000000000000000000000000000
      10 00 0015 312E322E3834302E31303030382E332E312E312E31
      20 00 002E 01 00 00 00
        30 00 0011 312E322E3834302E31303030382E312E31
        40 00 0011 312E322E3834302E31303030382E312E32
      50 00 0049
        51 00 0004 00010000
        52 00 002C
          322E32352E 323031383332343938333736393238303238
          343539303534333831393035323733343830353833
        55 00 000D 56455354494255 4C45 5F305F31
      """;

  @Test
  void asksForAnAssociationAsTheTablesSay() {
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(ACCEPT), take(1), listen())) {
      Association.open(peer.remote(WAIT), ECHO).orThrow().abort();
      assertThat(peer.received().get(0)).isEqualTo(hex(REQUEST));
      assertThat(peer.received().get(1)).isEqualTo(hex("07 00 00000004 00000000"));
    }
  }

  @Test
  void echoesAndReleases() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(ACCEPT),
            take(1),
            send(data(1, 3, answer(0x8030, 1, 0))),
            take(1),
            send(hex("06 00 00000004 00000000")))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      Answer answer = association.echo().orThrow();
      assertThat(answer.kind()).isEqualTo(Answer.Kind.SUCCESS);
      assertThat(association.release().orThrow()).isTrue();
      assertThat(association.isOpen()).isFalse();
      assertThat(association.echo())
          .isEqualTo(Outcome.refused("the association is over", "open another one"));
      // PS3.7 Table 9.3-12: class, field 0030H, message, no data set; PS3.8 Table 9-22
      assertThat(peer.received().get(1))
          .isEqualTo(
              hex(
                  """
                  04 00 0000004A 00000046 01 03
                  0000 0000 04000000 38000000
                  0000 0200 12000000 312E322E3834302E31303030382E312E3100
                  0000 0001 02000000 3000
                  0000 1001 02000000 0100
                  0000 0008 02000000 0101
                  """));
      assertThat(peer.received().get(2)).isEqualTo(hex("05 00 00000004 00000000"));
    }
  }

  @Test
  void bothSidesMayAskForTheEndAtOnce() {
    byte[] ask = hex("05 00 00000004 00000000");
    byte[] answer = hex("06 00 00000004 00000000");
    try (ScriptedPeer peer =
        ScriptedPeer.of(take(1), send(ACCEPT), take(1), send(ask), take(1), send(answer))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(association.release()).isEqualTo(Outcome.done(true));
      assertThat(peer.received().subList(1, 3)).containsExactly(ask, answer);
    }
  }

  @Test
  void dataOnTheirWayDoNotDisturbTheEnd() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1),
            send(ACCEPT),
            take(1),
            send(data(1, 3, answer(0x8030, 9, 0)), hex("06 00 00000004 00000000")))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(association.release()).isEqualTo(Outcome.done(true));
    }
  }

  /** PS3.8 Table 9-21. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1|1|1|REQUEST| rejected the association: it gave no reason (result 1, source 1, reason 1): see its log",
        "1|1|2|REQUEST| rejected the association: it does not know the application context of DICOM (result 1, source 1, reason 2): check that host and port are those of a DICOM archive",
        "1|1|3|REQUEST| rejected the association: it does not know our title (result 1, source 1, reason 3): have our title entered there, or correct it in the settings",
        "1|1|7|REQUEST| rejected the association: it is not called by this title (result 1, source 1, reason 7): correct its title in the settings",
        "1|2|2|REQUEST| rejected the association: it does not speak our version of the protocol (result 1, source 2, reason 2): ask its maker",
        "2|3|1|BUSY| rejected the association for now: it is too busy (result 2, source 3, reason 1): try again later",
        "2|3|2|BUSY| rejected the association for now: it has no free place for another association (result 2, source 3, reason 2): try again later",
        "2|9|9|BUSY| rejected the association for now: it gave a reason that the standard does not know (result 2, source 9, reason 9): see its log",
      })
  void saysWhyItWasRejected(int result, int source, int reason, Outcome.Kind kind, String words) {
    byte[] rejection = pdu(3, new byte[] {0, (byte) result, (byte) source, (byte) reason});
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(rejection))) {
      Outcome.Refused<Association> refused = refused(Association.open(peer.remote(WAIT), ECHO));
      assertThat(refused.sentence()).isEqualTo(peer.words() + " " + words);
      assertThat(refused.kind()).isEqualTo(kind);
    }
  }

  /** PS3.8 Table 9-26. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0|0| broke the association off: no reason given (source 0, reason 0): see its log",
        "2|0| broke the association off: its network part gave no reason (source 2, reason 0): see its log",
        "2|1| broke the association off: it received a PDU that it does not know (source 2, reason 1): ask its maker",
        "2|2| broke the association off: it received a PDU that it did not expect (source 2, reason 2): ask its maker",
        "2|6| broke the association off: it found a wrong value in a PDU (source 2, reason 6): ask its maker",
      })
  void saysWhyItWasBrokenOff(int source, int reason, String words) {
    byte[] abort = pdu(7, new byte[] {0, 0, (byte) source, (byte) reason});
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(ACCEPT), take(1), send(abort))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      Outcome.Refused<Answer> refused = refused(association.echo());
      assertThat(refused.sentence()).isEqualTo(peer.words() + " " + words);
      assertThat(refused.kind()).isEqualTo(Outcome.Kind.BUSY);
      assertThat(association.isOpen()).isFalse();
    }
  }

  @Test
  void anArchiveMayEndTheAssociationItself() {
    try (ScriptedPeer peer =
        ScriptedPeer.of(
            take(1), send(ACCEPT), take(1), send(hex("05 00 00000004 00000000")), take(1))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(refused(association.echo()).sentence())
          .isEqualTo(
              peer.words()
                  + " ended the association instead of the answer to our echo: see its log; try"
                  + " again");
      assertThat(peer.received().get(2)).isEqualTo(hex("06 00 00000004 00000000"));
    }
  }

  @Test
  void aServiceThatWasNotAgreedIsAnAnswerAndTheAssociationGoesOn() {
    byte[] none = accept(16384, accepted(1, 3, Laid.IMPLICIT));
    try (ScriptedPeer peer = ScriptedPeer.of(take(1), send(none), take(1))) {
      Association association = Association.open(peer.remote(WAIT), ECHO).orThrow();
      assertThat(association.takes(ECHO.get(0))).isFalse();
      Answer answer = association.echo().orThrow();
      assertThat(answer.sentence())
          .isEqualTo(
              "it did not agree to this service or this kind of object and its transfer syntax"
                  + " (status 0122)");
      assertThat(association.isOpen()).isTrue();
      association.abort();
    }
  }

  @Test
  void nobodyThereIsSaidSo() {
    RemoteEntity remote;
    try (ScriptedPeer peer = ScriptedPeer.of()) {
      remote = peer.remote(WAIT);
    }
    Outcome.Refused<Association> refused = refused(Association.open(remote, ECHO));
    assertThat(refused.sentence())
        .isEqualTo(
            "nothing takes connections for ARCHIVE at 127.0.0.1:"
                + remote.port()
                + ": check host and port, the network, and that it is running");
    assertThat(refused.kind()).isEqualTo(Outcome.Kind.BUSY);
  }

  @Test
  void anUnknownHostIsSaidSo() {
    RemoteEntity remote =
        new RemoteEntity(
            "archive.invalid", // RFC 2606: never exists
            104,
            new AeTitle("ARCHIVE"),
            new AeTitle("VESTIBULE"),
            Optional.empty(),
            Timeouts.DEFAULT);
    assertThat(refused(Association.open(remote, ECHO)).sentence())
        .isEqualTo(
            "the network knows no computer named archive.invalid: check the name and the"
                + " network");
  }

  @Test
  void titlesAreHeldToTheStandard() {
    assertThat(AeTitle.read(" ARCHIVE ").orThrow().value()).isEqualTo("ARCHIVE");
    for (String wrong : new String[] {"", "   ", "SEVENTEEN_LETTERS", "A\\B", "PRÄXIS"}) {
      assertThat(refused(AeTitle.read(wrong)).sentence())
          .isEqualTo(
              "an application entity title has 1 to 16 letters, digits or signs without accents"
                  + " and without a backslash: write the title as the archive's administrator"
                  + " gave it");
    }
  }

  static <T> Outcome.Refused<T> refused(Outcome<T> outcome) {
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return (Outcome.Refused<T>) outcome;
  }
}
