package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;

/**
 * The line to an archive is cut behind every single byte of an association with one object, in
 * either direction: each time there is an answer in words, none says that the object arrived if it
 * did not, and none that it can't be there.
 */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD) // a guard, not a measure
class CutLineTest {

  private static final Archive.Form FORM = new Archive.Form("1.2.3", "1.2.840.10008.1.2");

  /** Hands bytes on until so many went in one direction, then closes both sides. */
  private static final class Cutting implements AutoCloseable {
    private final ServerSocket door = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    private final int behind;
    private final boolean outward;
    private volatile AtomicInteger passed = new AtomicInteger();
    private volatile int most = Integer.MAX_VALUE;

    Cutting(int behind, boolean outward) throws IOException {
      this.behind = behind;
      this.outward = outward;
      daemon(this::serve);
    }

    private static void daemon(Runnable task) {
      Thread thread = new Thread(task, "cutting");
      thread.setDaemon(true);
      thread.start();
    }

    private void serve() {
      try {
        while (true) {
          Socket caller = door.accept();
          Socket archive = new Socket(InetAddress.getLoopbackAddress(), behind);
          AtomicInteger counted = new AtomicInteger();
          passed = counted;
          AtomicInteger free = new AtomicInteger(Integer.MIN_VALUE);
          daemon(() -> pump(caller, archive, outward ? counted : free));
          daemon(() -> pump(archive, caller, outward ? free : counted));
        }
      } catch (IOException over) {
        // the test is over
      }
    }

    private void pump(Socket from, Socket to, AtomicInteger gone) {
      try (from;
          to) {
        InputStream in = from.getInputStream();
        OutputStream out = to.getOutputStream();
        byte[] bytes = new byte[4096];
        while (true) {
          long room = (long) most - gone.get();
          int got = room <= 0 ? -1 : in.read(bytes, 0, (int) Math.min(room, bytes.length));
          if (got < 0) {
            return;
          }
          gone.addAndGet(got);
          out.write(bytes, 0, got);
        }
      } catch (IOException cut) {
        // the other direction closed it
      }
    }

    @Override
    public void close() throws IOException {
      door.close();
    }
  }

  private static final int OBJECT_BYTES = 200;

  private static Outcome<ArchiveSession> open(int port) {
    return QueriedArchive.open(port, Set.of(FORM));
  }

  private static Parcel parcel() {
    byte[] bytes = new byte[OBJECT_BYTES];
    return new Parcel(
        new Instance("1.2.3", "2.25.1", "2.25.10", "2.25.11"),
        FORM.transferSyntaxUid(),
        Parcel.Kind.PHOTO,
        () -> new ByteArrayInputStream(bytes),
        bytes.length,
        0);
  }

  /** What a cut may end in, in the order in which later and later cuts come to it. */
  private enum End {
    NOT_OPENED,
    FAILED,
    TAKEN
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void eachCutIsAnAnswer(boolean outward) throws IOException {
    try (FindPeer peer = new FindPeer(false, question -> new FindPeer.Matches(0, List.of()));
        Cutting line = new Cutting(peer.port(), outward)) {
      assertThat(attempt(line, peer, "whole")).isEqualTo(End.TAKEN);
      int whole = line.passed.get();
      assertThat(whole).isGreaterThan(outward ? 2 * OBJECT_BYTES : OBJECT_BYTES);
      Map<End, Integer> ends = new EnumMap<>(End.class);
      End furthest = End.NOT_OPENED;
      for (int cut = 0; cut < whole; cut++) {
        line.most = cut;
        End end = attempt(line, peer, "cut behind byte " + cut);
        assertThat(end).as("cut behind byte %s", cut).isGreaterThanOrEqualTo(furthest);
        furthest = end;
        ends.merge(end, 1, Integer::sum);
      }
      // PS3.8 9.3.2 and 9.3.6: a request has 74 bytes at least, a release 10
      assertThat(ends.get(End.NOT_OPENED)).isGreaterThan(74);
      assertThat(ends.get(End.FAILED)).isGreaterThan(outward ? OBJECT_BYTES : 12);
      assertThat(ends.get(End.TAKEN)).isBetween(9, 11);
      line.most = Integer.MAX_VALUE;
      assertThat(attempt(line, peer, "whole again")).isEqualTo(End.TAKEN);
    }
  }

  private static End attempt(Cutting line, FindPeer peer, String which) {
    int before = peer.stored.get();
    Outcome<ArchiveSession> opened = open(line.door.getLocalPort());
    if (opened instanceof Outcome.Refused<ArchiveSession> refused) {
      assertThat(refused.kind()).as(which).isEqualTo(Outcome.Kind.BUSY);
      assertWords(refused.sentence(), which);
      return End.NOT_OPENED;
    }
    try (ArchiveSession session = opened.orThrow()) {
      if (session.store(parcel()) instanceof StoreAnswer.Failed broken) {
        assertThat(broken.reach()).as(which).isEqualTo(StoreAnswer.Reach.SESSION);
        assertThat(broken.perhapsThere()).as(which).isTrue();
        assertWords(broken.words(), which);
        return End.FAILED;
      }
      // one more, and where the attempt before was cut last, its own may be counted late
      assertThat(peer.stored.get()).as(which).isGreaterThan(before);
      return End.TAKEN;
    }
  }

  private static void assertWords(String words, String which) {
    assertThat(words)
        .as(which)
        .containsPattern(
            "^(ARCHIVE at 127\\.0\\.0\\.1:\\d+ closed the connection (instead of the answer to our"
                + " (request for an association|object)|in the middle of a PDU)|the connection to"
                + " ARCHIVE at 127\\.0\\.0\\.1:\\d+ was cut while we waited for (the answer to our"
                + " (request for an association|object)|it to take our data)): see its log");
  }
}
