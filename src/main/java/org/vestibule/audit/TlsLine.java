package org.vestibule.audit;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import javax.net.ssl.SSLSocket;
import org.vestibule.keys.TlsSide;

/**
 * Syslog over TLS (RFC 5425). The protocol has no answer to a message; whether the other side is
 * still there is seen at the end, where it must end the connection in its turn.
 */
final class TlsLine implements SyslogLine {

  private static final int CONNECT_MILLIS = 3_000;
  private static final int SILENCE_MILLIS = 5_000;
  private static final int SHORT_MILLIS = 200;

  private final Socket plain;
  private final SSLSocket socket;
  private final OutputStream out;
  private final SyslogFrame frame;

  TlsLine(String host, int port, TlsSide side, SyslogFrame frame) throws IOException {
    this.frame = frame;
    plain = new Socket();
    try {
      plain.connect(new InetSocketAddress(host, port), CONNECT_MILLIS);
      plain.setSoTimeout(SILENCE_MILLIS);
      socket = side.over(plain, host, port);
      socket.startHandshake();
      out = new BufferedOutputStream(socket.getOutputStream());
    } catch (IOException e) {
      plain.close();
      throw e;
    }
  }

  @Override
  public void send(String time, String xml) throws IOException {
    out.write(frame.counted(time, xml));
  }

  @Override
  public void settle() throws IOException {
    out.flush();
    // The JDK passes over a reset that comes while it says goodbye: it is looked for before.
    if (isOverBefore(SHORT_MILLIS)) {
      throw new IOException("the syslog server ended the connection before we did");
    }
    socket.shutdownOutput();
    if (plain.isClosed()) {
      throw new IOException("the syslog server broke the connection off");
    }
    isOverBefore(SILENCE_MILLIS);
  }

  /** Passes over whatever a server says, until it ends the connection or this time is over. */
  private boolean isOverBefore(int millis) throws IOException {
    plain.setSoTimeout(millis);
    try {
      while (socket.getInputStream().read() >= 0) {
        // A server has nothing to say.
      }
      return true;
    } catch (SocketTimeoutException stillThere) {
      return false;
    }
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
