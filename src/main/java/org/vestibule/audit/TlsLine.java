package org.vestibule.audit;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.time.Duration;
import javax.net.ssl.SSLSocket;
import org.vestibule.keys.TlsSide;

/**
 * Syslog over TLS (RFC 5425). The protocol has no answer to a message; whether the other side has
 * taken everything is seen at the end alone, where it must end the connection in its turn (4.4).
 */
final class TlsLine implements SyslogLine {

  private static final int CONNECT_MILLIS = 3_000;
  private static final int SHORT_MILLIS = 200;

  private final Duration silence;
  private final Socket plain;
  private final LineWatch watch;
  private final SSLSocket socket;
  private final OutputStream out;
  private final SyslogFrame frame;

  /**
   * @param silence how long the server may take for the handshake, for any message, and for the end
   */
  TlsLine(String host, int port, TlsSide side, SyslogFrame frame, Duration silence)
      throws IOException {
    this.frame = frame;
    this.silence = silence;
    plain = new Socket();
    watch = new LineWatch(plain, silence.plusMillis(CONNECT_MILLIS));
    try {
      plain.connect(new InetSocketAddress(host, port), CONNECT_MILLIS);
      socket = side.over(plain, host, port);
      socket.startHandshake();
      out = new BufferedOutputStream(socket.getOutputStream());
    } catch (IOException e) {
      watch.close();
      plain.close();
      throw e;
    }
  }

  @Override
  public void send(String time, String xml) throws IOException {
    watch.allow(silence);
    try {
      out.write(frame.counted(time, xml));
    } catch (IOException broken) {
      throw orStuck(broken);
    }
  }

  @Override
  public boolean settle() throws IOException {
    watch.allow(silence);
    try {
      out.flush();
      // The JDK passes over a reset that comes while it says goodbye: it is looked for before.
      if (isOverBefore(SHORT_MILLIS)) {
        throw new LineEndedException("ended the connection before we did");
      }
      watch.allow(silence);
      socket.shutdownOutput();
      if (plain.isClosed()) {
        throw new LineEndedException("broke the connection off");
      }
      // Waiting for its goodbye has an end of its own, which must not be taken for silence.
      watch.allow(silence.multipliedBy(2));
      // RFC 5425 4.4: who is told goodbye must say it too; some are slow, and some never do.
      return isOverBefore(Math.toIntExact(silence.toMillis()));
    } catch (IOException broken) {
      throw orStuck(broken);
    }
  }

  private IOException orStuck(IOException broken) {
    return watch.hasStruck()
        ? new LineEndedException("has taken nothing for " + silence.toSeconds() + " seconds")
        : broken;
  }

  /** Passes over whatever a server says, until it ends the connection or this time is over. */
  private boolean isOverBefore(int millis) throws IOException {
    long end = System.nanoTime() + Duration.ofMillis(millis).toNanos();
    plain.setSoTimeout(millis);
    try {
      while (socket.getInputStream().read() >= 0) {
        if (end - System.nanoTime() <= 0) {
          return false;
        }
      }
      return true;
    } catch (SocketTimeoutException stillThere) {
      return false;
    }
  }

  @Override
  public void close() throws IOException {
    watch.allow(silence);
    try {
      socket.close();
    } finally {
      watch.close();
    }
  }
}
