package org.vestibule.dicom.net;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketOption;
import java.net.SocketTimeoutException;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.time.Duration;
import java.util.Optional;
import javax.net.ssl.SSLSocket;
import org.vestibule.keys.TlsFailure;
import org.vestibule.keys.TlsSide;

/** Bytes to and from the other side, plain or by TLS, each wait watched. */
final class Connection implements AutoCloseable {

  private static final int BUFFER_BYTES = 16384;

  private final SocketChannel channel;
  private final Watchdog watchdog;
  private final Optional<SSLSocket> tls;
  private final InputStream in;
  private final String peer;
  private final Optional<SocketOption<?>> quick;
  private byte[] clear = new byte[0];

  private Connection(SocketChannel channel, Watchdog watchdog, Optional<SSLSocket> tls, String peer)
      throws IOException {
    this.channel = channel;
    this.watchdog = watchdog;
    this.tls = tls;
    this.peer = peer;
    this.quick = quick(channel);
    InputStream raw =
        tls.isPresent() ? tls.get().getInputStream() : channel.socket().getInputStream();
    this.in = new BufferedInputStream(raw, BUFFER_BYTES);
  }

  /**
   * Makes a connected channel ready, with the TLS handshake done; the channel is closed on failure.
   *
   * @param host whom the other side's certificate must be for
   * @param peer how the other side is called in a sentence
   */
  static Connection over(
      SocketChannel channel,
      Watchdog watchdog,
      Optional<TlsSide> side,
      String host,
      int port,
      String peer)
      throws NetFailure {
    try {
      channel.setOption(StandardSocketOptions.TCP_NODELAY, true);
      Optional<SSLSocket> tls = Optional.empty();
      if (side.isPresent()) {
        SSLSocket socket = side.get().over(channel.socket(), host, port);
        socket.startHandshake();
        tls = Optional.of(socket);
      }
      return new Connection(channel, watchdog, tls, peer);
    } catch (IOException failure) {
      watchdog.close();
      Connecting.quietly(channel);
      if (watchdog.hasStruck()) {
        throw NetFailure.passing(
            peer + " did not finish the TLS handshake in time",
            "check that the port is one for TLS");
      }
      if (TlsFailure.isTls(failure)) {
        throw NetFailure.of(TlsFailure.refused(failure, peer));
      }
      throw NetFailure.passing(
          peer + " closed the connection during the TLS handshake",
          "check that the port is one for TLS and that our certificate is accepted there");
    }
  }

  String peer() {
    return peer;
  }

  boolean isTls() {
    return tls.isPresent();
  }

  /** Begins a wait that the following reads and writes share. */
  void allow(Duration limit) {
    watchdog.arm(limit);
  }

  void allowAll() {
    watchdog.disarm();
  }

  /**
   * Acknowledges at once what has come, where the system can. An archive that writes an answer in
   * two parts, as many do, else holds the second back until the first is acknowledged (RFC 896),
   * which a system delays by up to half a second (RFC 1122 4.2.3.2).
   */
  private void acknowledge() throws IOException {
    if (quick.isPresent()) {
      set(quick.get());
    }
  }

  private <T> void set(SocketOption<T> option) throws IOException {
    channel.setOption(option, option.type().cast(true));
  }

  /** Found by its name, since only some systems have it (tcp(7) of Linux). */
  private static Optional<SocketOption<?>> quick(SocketChannel channel) {
    for (SocketOption<?> option : channel.supportedOptions()) {
      if (option.name().equals("TCP_QUICKACK")) {
        return Optional.of(option);
      }
    }
    return Optional.empty();
  }

  /** True if a wait lasted too long. */
  boolean isOverdue() {
    return watchdog.hasStruck();
  }

  /** Writes all of these buffers, which should be direct. */
  void write(ByteBuffer... parts) throws IOException {
    if (tls.isPresent()) {
      writeClear(tls.get().getOutputStream(), parts);
      return;
    }
    if (parts.length == 1) {
      while (parts[0].hasRemaining()) {
        channel.write(parts[0]);
      }
      return;
    }
    long left = 0;
    for (ByteBuffer part : parts) {
      left += part.remaining();
    }
    while (left > 0) {
      left -= channel.write(parts);
    }
  }

  private void writeClear(OutputStream out, ByteBuffer... parts) throws IOException {
    int total = 0;
    for (ByteBuffer part : parts) {
      total = Math.addExact(total, part.remaining());
    }
    if (clear.length < total) {
      clear = new byte[total];
    }
    int at = 0;
    for (ByteBuffer part : parts) {
      int length = part.remaining();
      part.get(clear, at, length);
      at += length;
    }
    out.write(clear, 0, total);
  }

  /** Reads up to this many bytes; fewer only where the other side has closed. */
  int read(byte[] target, int length) throws IOException {
    int got = 0;
    while (got < length) {
      int more = in.read(target, got, length - got);
      if (more < 0) {
        return got;
      }
      got += more;
      if (got < length) {
        acknowledge();
      }
    }
    return got;
  }

  /** True if something can be read, or the other side has closed, within this time. */
  boolean isReadable(Duration limit) throws IOException {
    Socket socket = tls.isPresent() ? tls.get() : channel.socket();
    socket.setSoTimeout((int) Math.max(1, limit.toMillis()));
    try {
      in.mark(1);
      in.read();
      in.reset();
      return true;
    } catch (SocketTimeoutException nothing) {
      return false;
    } finally {
      socket.setSoTimeout(0);
    }
  }

  /** Closes at once; of TLS the end is told if the other side takes it within this time. */
  void close(Duration limit) {
    if (tls.isPresent()) {
      watchdog.arm(limit);
      Connecting.quietly(tls.get());
    }
    close();
  }

  @Override
  public void close() {
    watchdog.close();
    Connecting.quietly(channel);
  }
}
