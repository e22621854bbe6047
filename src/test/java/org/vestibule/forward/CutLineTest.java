package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;

/**
 * The line to an archive is cut at one byte after the other, in either direction: each time there
 * is an answer, none says that the object arrived if it may not have, and none that it can't be
 * there.
 */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD) // a guard, not a measure
class CutLineTest {

  private static final Archive.Form FORM = new Archive.Form("1.2.3", "1.2.840.10008.1.2");

  /** Hands bytes on until so many went in one direction, then closes both sides. */
  private static final class Cutting implements AutoCloseable {
    private final ServerSocket door = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    private final int behind;
    private final boolean outward;
    private final AtomicInteger passed = new AtomicInteger();
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
          daemon(() -> pump(caller, archive, outward));
          daemon(() -> pump(archive, caller, !outward));
        }
      } catch (IOException over) {
        // the test is over
      }
    }

    private void pump(Socket from, Socket to, boolean counted) {
      try (from;
          to) {
        InputStream in = from.getInputStream();
        OutputStream out = to.getOutputStream();
        byte[] bytes = new byte[4096];
        while (true) {
          int room = counted ? most - passed.get() : bytes.length;
          int got = room <= 0 ? -1 : in.read(bytes, 0, Math.min(room, bytes.length));
          if (got < 0) {
            return;
          }
          out.write(bytes, 0, got);
          if (counted) {
            passed.addAndGet(got);
          }
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

  private static Outcome<ArchiveSession> open(int port) {
    return QueriedArchive.open(port, Set.of(FORM));
  }

  private static Parcel parcel() {
    byte[] bytes = new byte[3000];
    return new Parcel(
        new Instance("1.2.3", "2.25.1", "2.25.10", "2.25.11"),
        FORM.transferSyntaxUid(),
        Parcel.Kind.PHOTO,
        () -> new ByteArrayInputStream(bytes),
        bytes.length,
        0);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void eachCutIsAnAnswer(boolean outward) throws IOException {
    long seed = Long.getLong("vestibule.seed", 20261126L);
    System.out.println("seed " + seed);
    Random random = new Random(seed);
    try (FindPeer peer = new FindPeer(false, question -> new FindPeer.Matches(0, List.of()));
        Cutting line = new Cutting(peer.port(), outward)) {
      try (ArchiveSession session = open(line.door.getLocalPort()).orThrow()) {
        assertThat(session.store(parcel())).isInstanceOf(StoreAnswer.Accepted.class);
      }
      int whole = line.passed.get();
      int refused = 0;
      int failed = 0;
      for (int cut = 0; cut < whole; cut += 1 + random.nextInt(outward ? 20 : 3)) {
        line.passed.set(0);
        line.most = cut;
        if (!(open(line.door.getLocalPort()) instanceof Outcome.Done<ArchiveSession> opened)) {
          refused++;
          continue;
        }
        try (ArchiveSession session = opened.value()) {
          StoreAnswer answer = session.store(parcel());
          if (answer instanceof StoreAnswer.Failed broken) {
            failed++;
            assertThat(broken.reach()).as("cut at %s", cut).isEqualTo(StoreAnswer.Reach.SESSION);
            assertThat(broken.perhapsThere()).as("cut at %s", cut).isTrue();
          } else {
            assertThat(cut).as("taken, so only the release was cut").isGreaterThan(whole - 20);
          }
        }
      }
      assertThat(refused).isPositive();
      assertThat(failed).isPositive();
    }
  }
}
