package org.vestibule.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A line to a server that breaks after so many bytes, and stays broken until it is mended. */
final class CutLine implements AutoCloseable {

  private final ServerSocket door;
  private final int serverPort;
  private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
  private long left = Long.MAX_VALUE;
  private boolean broken;

  CutLine(int serverPort) {
    this.serverPort = serverPort;
    try {
      this.door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    start(this::listen);
  }

  private static void start(Runnable work) {
    Thread thread = new Thread(work, "cut line");
    thread.setDaemon(true);
    thread.start();
  }

  int port() {
    return door.getLocalPort();
  }

  /** From now on the line lets so many bytes pass towards the server. */
  synchronized void breakAfter(long bytes) {
    left = bytes;
  }

  synchronized boolean isBroken() {
    return broken;
  }

  synchronized void mend() {
    left = Long.MAX_VALUE;
    broken = false;
  }

  private synchronized int passes(int bytes) {
    if (broken) {
      return 0;
    }
    int passing = (int) Math.min(left, bytes);
    left -= passing;
    if (left == 0) {
      broken = true;
    }
    return passing;
  }

  private void listen() {
    while (!door.isClosed()) {
      try {
        Socket browser = door.accept();
        if (isBroken()) {
          browser.close();
          continue;
        }
        Socket server = new Socket(InetAddress.getLoopbackAddress(), serverPort);
        sockets.add(browser);
        sockets.add(server);
        start(() -> pump(browser, server, true));
        start(() -> pump(server, browser, false));
      } catch (IOException closed) {
        // The test has ended.
      }
    }
  }

  private void pump(Socket from, Socket to, boolean counted) {
    byte[] buffer = new byte[8192];
    try (from;
        to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        int passing = counted ? passes(n) : n;
        out.write(buffer, 0, passing);
        out.flush();
        if (passing < n || isBroken()) {
          cut();
          return;
        }
      }
    } catch (IOException brokenOff) {
      // So it is meant.
    }
  }

  private void cut() throws IOException {
    for (Socket socket : sockets) {
      socket.close();
    }
    sockets.clear();
  }

  @Override
  public void close() throws IOException {
    door.close();
    cut();
  }
}
