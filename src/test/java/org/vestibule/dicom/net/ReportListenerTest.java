package org.vestibule.dicom.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.dicom.net.AssociationTest.refused;
import static org.vestibule.dicom.net.Laid.accepted;
import static org.vestibule.dicom.net.Laid.answer;
import static org.vestibule.dicom.net.Laid.ascii;
import static org.vestibule.dicom.net.Laid.command;
import static org.vestibule.dicom.net.Laid.data;
import static org.vestibule.dicom.net.Laid.hex;
import static org.vestibule.dicom.net.Laid.item;
import static org.vestibule.dicom.net.Laid.pdu;
import static org.vestibule.dicom.net.Laid.proposed;
import static org.vestibule.dicom.net.Laid.request;
import static org.vestibule.dicom.net.Laid.ui;
import static org.vestibule.dicom.net.Laid.us;

import java.io.DataInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.vestibule.base.Outcome;

/** The listener, called by bytes laid down by hand. */
@Timeout(60) // a guard against waiting for ever, not a measure
class ReportListenerTest {

  private static final String COMMITMENT = "1.2.840.10008.1.20.1";
  private static final String VERIFICATION = "1.2.840.10008.1.1";
  private static final Duration WAIT = Duration.ofSeconds(5);

  private final List<CommitmentReport> reports = new CopyOnWriteArrayList<>();
  private final List<String> turnedAway = new CopyOnWriteArrayList<>();
  private boolean kept = true;
  private ReportListener listener;

  private final ReportReceiver receiver =
      new ReportReceiver() {
        @Override
        public boolean report(AeTitle from, CommitmentReport report) {
          assertThat(from.value()).isEqualTo("ARCHIVE");
          reports.add(report);
          return kept;
        }

        @Override
        public void turnedAway(String words) {
          turnedAway.add(words);
        }
      };

  @AfterEach
  void close() {
    if (listener != null) {
      listener.close();
    }
  }

  private void start(Duration wait, int mostAtOnce) {
    listener = ReportListener.start(rules(0, wait, mostAtOnce), receiver).orThrow();
  }

  private static ListenerRules rules(int port, Duration wait, int mostAtOnce) {
    return new ListenerRules(
        InetAddress.getLoopbackAddress(),
        port,
        new AeTitle("VESTIBULE"),
        Set.of(new AeTitle("ARCHIVE")),
        Optional.empty(),
        new Timeouts(wait, wait, wait, wait, wait),
        mostAtOnce);
  }

  /** One call: sends these bytes one after the other and takes a PDU for each. */
  private final class Call implements AutoCloseable {
    private final Socket socket;
    private final DataInputStream in;

    Call() throws IOException {
      socket = new Socket(InetAddress.getLoopbackAddress(), listener.port());
      in = new DataInputStream(socket.getInputStream());
    }

    byte[] ask(byte[]... bytes) throws IOException {
      socket.getOutputStream().write(Laid.join(bytes));
      return take();
    }

    byte[] take() throws IOException {
      byte[] header = in.readNBytes(6);
      if (header.length < 6) {
        return header;
      }
      return Laid.join(header, in.readNBytes((header[4] & 0xFF) << 8 | (header[5] & 0xFF)));
    }

    @Override
    public void close() throws IOException {
      socket.close();
    }
  }

  private static byte[] good() {
    return request(
        "VESTIBULE",
        "ARCHIVE",
        proposed(1, COMMITMENT, Laid.IMPLICIT),
        proposed(3, VERIFICATION, Laid.EXPLICIT),
        proposed(5, Photographs.PHOTOGRAPH, Laid.IMPLICIT),
        proposed(7, COMMITMENT, Photographs.JPEG));
  }

  @Test
  void takesAReportAnEchoAndTheRelease() throws IOException {
    start(WAIT, 2);
    try (Call call = new Call()) {
      byte[] acceptance = call.ask(good());
      // PS3.8 Tables 9-17 and 9-18: 1 and 3 accepted, 5 no abstract syntax, 7 no transfer syntax
      assertThat(acceptance[0]).isEqualTo((byte) 2);
      assertThat(acceptance)
          .containsSequence(accepted(1, 0, Laid.IMPLICIT))
          .containsSequence(accepted(3, 0, Laid.EXPLICIT))
          .containsSequence(accepted(5, 3, Laid.IMPLICIT))
          .containsSequence(accepted(7, 4, Laid.IMPLICIT));
      byte[] report = Laid.report("2.25.5", "2.25.6", "2.25.7", 0x0213);
      byte[] answered = call.ask(data(1, 3, Laid.eventReport(4, 2)), data(1, 2, report));
      assertThat(answered)
          .isEqualTo(
              data(
                  1,
                  3,
                  command(
                      ui(0x0002, COMMITMENT),
                      us(0x0100, 0x8100),
                      us(0x0120, 4),
                      us(0x0800, 0x0101),
                      us(0x0900, 0),
                      ui(0x1000, "1.2.840.10008.1.20.1.1"),
                      us(0x1002, 2))));
      assertThat(reports.get(0).failed().get(0).why().sentence())
          .isEqualTo("out of resources (status 0213)");
      byte[] echo =
          command(ui(0x0002, VERIFICATION), us(0x0100, 0x30), us(0x0110, 5), us(0x0800, 0x0101));
      assertThat(call.ask(data(3, 3, echo))).containsSequence(hex("0000 0009 02000000 0000"));
      assertThat(call.ask(hex("05 00 00000004 00000000")))
          .isEqualTo(hex("06 00 00000004 00000000"));
      assertThat(call.take()).isEmpty();
    }
    assertThat(turnedAway).isEmpty();
  }

  @Test
  void aReportThatNobodyAskedForIsToldSo() throws IOException {
    kept = false;
    start(WAIT, 2);
    try (Call call = new Call()) {
      call.ask(good());
      byte[] report = Laid.report("2.25.5", "2.25.6", "2.25.7", 0x0213);
      assertThat(call.ask(data(1, 3, Laid.eventReport(4, 2)), data(1, 2, report)))
          .containsSequence(hex("0000 0009 02000000 1501"));
    }
  }

  /** PS3.7 D.3.3.4: the archive says that it will be the provider. */
  @Test
  void agreesToTheArchivesRole() throws IOException {
    start(WAIT, 2);
    byte[] role = Laid.join(hex("0014"), ascii(COMMITMENT), hex("00 01"));
    byte[] body = good();
    byte[] user = item(0x50, item(0x51, hex("00004000")), item(0x54, role));
    byte[] plain = java.util.Arrays.copyOfRange(body, 6, body.length - 4 - 8 - 11);
    try (Call call = new Call()) {
      assertThat(call.ask(pdu(1, plain, user))).containsSequence(item(0x54, role));
    }
  }

  @Test
  void turnsStrangersAway() throws IOException {
    start(WAIT, 2);
    try (Call call = new Call()) {
      assertThat(call.ask(request("VESTIBULE", "STRANGER")))
          .isEqualTo(hex("03 00 00000004 00 01 01 03"));
    }
    try (Call call = new Call()) {
      assertThat(call.ask(request("SOMEBODY", "ARCHIVE")))
          .isEqualTo(hex("03 00 00000004 00 01 01 07"));
    }
    assertThat(turnedAway)
        .containsExactly(
            "a caller was turned away: it calls itself STRANGER and us VESTIBULE; we are VESTIBULE"
                + " and expect [ARCHIVE]",
            "a caller was turned away: it calls itself ARCHIVE and us SOMEBODY; we are VESTIBULE"
                + " and expect [ARCHIVE]");
  }

  @Test
  void whatIsNotForUsIsRefused() throws IOException {
    start(WAIT, 2);
    try (Call call = new Call()) {
      call.ask(good());
      byte[] store = command(us(0x0100, 1), us(0x0110, 5), us(0x0800, 1), ui(0x1000, "2.25.1"));
      assertThat(call.ask(data(3, 3, store), data(3, 2, new byte[8])))
          .containsSequence(hex("0000 0009 02000000 1102"));
      assertThat(call.ask(data(3, 3, answer(0x8030, 1, 0))))
          .isEqualTo(hex("07 00 00000004 00 00 02 00"));
    }
  }

  @Test
  void garbageIsBrokenOff() throws IOException {
    start(WAIT, 2);
    try (Call call = new Call()) {
      assertThat(call.ask(ascii("GET / HTTP/1.1\r\n\r\n")))
          .isEqualTo(hex("07 00 00000004 00 00 02 01"));
    }
    try (Call call = new Call()) {
      assertThat(call.ask(data(1, 3, answer(0x8030, 1, 0))))
          .isEqualTo(hex("07 00 00000004 00 00 02 02"));
    }
    assertThat(turnedAway.get(0)).startsWith("the caller sent bytes that are no DICOM");
  }

  @Test
  void theSilentAreLetGo() throws IOException {
    start(Duration.ofMillis(300), 2);
    try (Call call = new Call()) {
      assertThat(call.take()).isEmpty();
    }
    while (turnedAway.isEmpty()) {
      Thread.onSpinWait();
    }
    assertThat(turnedAway.get(0))
        .startsWith("the caller was silent too long: we waited for a request for an association");
  }

  @Test
  void aReceiverThatBreaksBreaksTheCallOnly() throws IOException {
    listener =
        ReportListener.start(
                rules(0, WAIT, 1),
                new ReportReceiver() {
                  @Override
                  public boolean report(AeTitle from, CommitmentReport report) {
                    throw new IllegalStateException("no disk");
                  }

                  @Override
                  public void turnedAway(String words) {
                    turnedAway.add(words);
                  }
                })
            .orThrow();
    try (Call call = new Call()) {
      call.ask(good());
      byte[] report = Laid.report("2.25.5", "2.25.6", "2.25.7", 0x0213);
      assertThat(call.ask(data(1, 3, Laid.eventReport(4, 2)), data(1, 2, report)))
          .isEqualTo(hex("07 00 00000004 00 00 02 00"));
    }
    assertThat(turnedAway)
        .containsExactly(
            "the program failed on a call (IllegalStateException): see that the ledger can be"
                + " written, and report it otherwise");
  }

  @Test
  void moreThanAgreedAreRejectedForNow() throws IOException {
    start(WAIT, 1);
    try (Call first = new Call()) {
      first.ask(good());
      try (Call second = new Call()) {
        assertThat(second.take()).isEqualTo(hex("03 00 00000004 00 02 03 01"));
      }
    }
    assertThat(turnedAway).contains("a caller was turned away: 1 are here already");
  }

  @Test
  void aPortThatIsTakenIsSaidSo() {
    start(WAIT, 1);
    Outcome.Refused<ReportListener> refused =
        refused(ReportListener.start(rules(listener.port(), WAIT, 1), receiver));
    assertThat(refused.sentence())
        .isEqualTo(
            "port "
                + listener.port()
                + " for storage commitment reports can't be opened: see that no other program uses"
                + " it, or name another port in the settings");
  }
}
