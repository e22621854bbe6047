package org.vestibule.dicom.net;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;

/** The other side of one connection: does what its script says and keeps what it was sent. */
final class ScriptedPeer implements AutoCloseable {

  /** One step of a script. */
  @FunctionalInterface
  interface Step {
    void run(ScriptedPeer peer) throws IOException;
  }

  private final ServerSocket door;
  private final Thread thread;
  private final List<byte[]> received = new CopyOnWriteArrayList<>();
  private Socket socket;
  private DataInputStream in;
  private OutputStream out;

  private ScriptedPeer(Step... script) throws IOException {
    door = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    thread = new Thread(() -> play(script), "scripted-peer");
    thread.setDaemon(true);
    thread.start();
  }

  static ScriptedPeer of(Step... script) {
    try {
      return new ScriptedPeer(script);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void play(Step... script) {
    try (Socket accepted = door.accept()) {
      socket = accepted;
      in = new DataInputStream(accepted.getInputStream());
      out = accepted.getOutputStream();
      for (Step step : script) {
        step.run(this);
      }
    } catch (IOException theOtherSideLeft) {
      // The tests look at what it received.
    }
  }

  /** Takes whole PDUs, headers included. */
  static Step take(int count) {
    return peer -> {
      for (int i = 0; i < count; i++) {
        peer.takeOne();
      }
    };
  }

  private byte[] takeOne() throws IOException {
    byte[] header = new byte[6];
    in.readFully(header);
    byte[] body =
        new byte
            [(header[2] & 0xFF) << 24
                | (header[3] & 0xFF) << 16
                | (header[4] & 0xFF) << 8
                | (header[5] & 0xFF)];
    in.readFully(body);
    byte[] pdu = Laid.join(header, body);
    received.add(pdu);
    return pdu;
  }

  /** Takes PDUs up to the last fragment of a data set. */
  static Step takeDataSet() {
    return peer -> {
      while (true) {
        byte[] pdu = peer.takeOne();
        if (pdu[0] == 4 && pdu[11] == 2) {
          return;
        }
      }
    };
  }

  static Step send(byte[]... bytes) {
    return peer -> {
      peer.out.write(Laid.join(bytes));
      peer.out.flush();
    };
  }

  /** Sends one byte after the other, slowly, for ever. */
  static Step drip(byte[] first, byte[] then, Duration pause) {
    return peer -> {
      peer.out.write(first);
      while (true) {
        peer.out.write(then);
        try {
          Thread.sleep(pause.toMillis());
        } catch (InterruptedException e) {
          return;
        }
      }
    };
  }

  /** Sends the same bytes for ever, as fast as they are taken. */
  static Step flood(byte[] bytes) {
    return peer -> {
      while (true) {
        peer.out.write(bytes);
      }
    };
  }

  /** Closes its sending half alone. */
  static Step halfClose() {
    return peer -> peer.socket.shutdownOutput();
  }

  /** Takes whatever comes until the caller closes. */
  static Step listen() {
    return peer -> {
      try {
        while (true) {
          peer.takeOne();
        }
      } catch (IOException end) {
        // The caller has closed.
      }
    };
  }

  /** Takes nothing and says nothing until the test is over. */
  static Step hang() {
    return peer -> {
      try {
        Thread.sleep(60_000);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    };
  }

  /** How it is called, with waits as short as a test wants them. */
  RemoteEntity remote(Duration wait) {
    return remote(new Timeouts(wait, wait, wait, wait, wait));
  }

  RemoteEntity remote(Timeouts timeouts) {
    return new RemoteEntity(
        "127.0.0.1",
        door.getLocalPort(),
        new AeTitle("ARCHIVE"),
        new AeTitle("VESTIBULE"),
        Optional.empty(),
        timeouts);
  }

  /** How it stands in a sentence. */
  String words() {
    return "ARCHIVE at 127.0.0.1:" + door.getLocalPort();
  }

  /** What was received, after the script has ended. */
  List<byte[]> received() {
    try {
      thread.join(5000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return received;
  }

  @Override
  public void close() {
    thread.interrupt();
    try {
      door.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
