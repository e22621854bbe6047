package org.vestibule.audit;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.net.ssl.SSLSocket;

/** Reads syslog over TLS as RFC 5425 says, and hangs up when it was told to. */
final class CountingReceiver implements Closeable {

  private final ServerSocket server;
  private final TestCertificate certificate;
  private final List<String> messages = new CopyOnWriteArrayList<>();
  private final Thread thread;
  private volatile int hangUpAfter = Integer.MAX_VALUE;
  private final List<Socket> keptOpen = new CopyOnWriteArrayList<>();
  private volatile boolean neverCloses;

  CountingReceiver(TestCertificate certificate, int port) throws IOException {
    this.certificate = certificate;
    this.server = new ServerSocket(port, 10, InetAddress.getLoopbackAddress());
    this.thread = new Thread(this::serve, "receiver");
    thread.setDaemon(true);
    thread.start();
  }

  int port() {
    return server.getLocalPort();
  }

  List<String> messages() {
    return messages;
  }

  /** Against RFC 5425 4.4: it reads everything and says no goodbye. */
  void neverClose() {
    neverCloses = true;
  }

  void hangUpAfter(int count) {
    hangUpAfter = count;
  }

  private void serve() {
    while (!server.isClosed()) {
      try {
        Socket plain = server.accept();
        keptOpen.add(plain);
        SSLSocket socket =
            certificate.identity().server(Clock.systemUTC()).orThrow().over(plain, "", 0);
        try {
          socket.startHandshake();
          read(socket.getInputStream(), plain);
        } finally {
          if (!neverCloses) {
            socket.close();
          }
        }
      } catch (IOException ended) {
        // The next line will be accepted.
      }
    }
  }

  private void read(InputStream in, Socket plain) throws IOException {
    for (int count = 0; count < hangUpAfter; count++) {
      StringBuilder length = new StringBuilder();
      for (int b = in.read(); b != ' '; b = in.read()) {
        if (b < 0) {
          return;
        }
        length.append((char) b);
      }
      byte[] message = in.readNBytes(Integer.parseInt(length.toString()));
      messages.add(new String(message, StandardCharsets.UTF_8));
    }
    hangUpAfter = Integer.MAX_VALUE;
    plain.setSoLinger(true, 0); // the connection is reset, as by a server that dies
    plain.close();
    throw new IOException("hung up as told");
  }

  @Override
  public void close() throws IOException {
    for (Socket open : keptOpen) {
      open.close();
    }
    server.close();
  }
}
