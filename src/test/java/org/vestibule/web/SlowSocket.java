package org.vestibule.web;

import java.io.EOFException;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;

/** A caller who begins a request and does not end it, or does not take the answer. */
final class SlowSocket implements AutoCloseable {

  /** How long a test waits for an answer before it calls that none. */
  private static final int WATCHDOG_MILLIS = 20_000;

  private final Socket socket = new Socket();

  /**
   * @param from the address that it comes from; all of 127.0.0.0/8 is this machine (RFC 1122,
   *     3.2.1.3)
   */
  SlowSocket(String from, int port) throws IOException {
    socket.setReceiveBufferSize(4096);
    socket.setSoTimeout(WATCHDOG_MILLIS);
    socket.bind(new InetSocketAddress(InetAddress.getAllByName(from)[0], 0));
    socket.connect(new InetSocketAddress(InetAddress.getAllByName("127.0.0.1")[0], port));
  }

  /** Sends these lines, each ended as HTTP ends it; the last one is not ended. */
  SlowSocket say(String... lines) throws IOException {
    socket.getOutputStream().write(String.join("\r\n", lines).getBytes(StandardCharsets.US_ASCII));
    socket.getOutputStream().flush();
    return this;
  }

  /** True if nothing was said to it so far. */
  boolean isUnanswered() throws IOException {
    return socket.getInputStream().available() == 0;
  }

  /** The status of the first answer; -1 if the connection was closed without one. */
  int status() throws IOException {
    try {
      byte[] start = socket.getInputStream().readNBytes(12);
      String line = new String(start, StandardCharsets.US_ASCII);
      return line.startsWith("HTTP/1.1 ") ? Integer.parseInt(line.substring(9)) : -1;
    } catch (SocketException closed) {
      return -1;
    }
  }

  /** The lines after the first one, up to the empty one; after {@link #status}. */
  String headers() throws IOException {
    StringBuilder lines = new StringBuilder();
    while (!lines.toString().endsWith("\r\n\r\n")) {
      int next = socket.getInputStream().read();
      if (next < 0) {
        throw new EOFException("the answer ends in its headers: " + lines);
      }
      lines.append((char) next);
    }
    return lines.toString();
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
