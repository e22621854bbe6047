package org.vestibule;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** An independent program that listens on a port of this computer until it is closed. */
public final class RunningPeer implements AutoCloseable {

  private static final int MOST_TRIES = 200;
  private static final int PAUSE_MILLIS = 50;

  private final ExternalTool tool;
  private final String[] arguments;
  private final int port;
  private Process process;

  private RunningPeer(ExternalTool tool, int port, String... arguments) throws IOException {
    this.tool = tool;
    this.port = port;
    this.arguments = arguments;
    start();
  }

  /**
   * Starts a program of DCMTK and waits until it takes connections.
   *
   * @param options the port follows as the last argument
   */
  public static RunningPeer ofToolkit(String name, String... options) throws IOException {
    return ofToolkit(freePort(), name, options);
  }

  public static RunningPeer ofToolkit(int port, String name, String... options) throws IOException {
    List<String> arguments = new ArrayList<>(List.of(options));
    arguments.add(Integer.toString(port));
    return new RunningPeer(
        ExternalTool.require(name, "dcmtk"), port, arguments.toArray(new String[0]));
  }

  /**
   * Starts any program and waits until it takes connections on this port.
   *
   * @param arguments the port among them
   */
  public static RunningPeer of(ExternalTool tool, int port, String... arguments)
      throws IOException {
    return new RunningPeer(tool, port, arguments);
  }

  /** A port that nobody listens on, by the system's choice. */
  public static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private void start() throws IOException {
    process = tool.start(arguments);
    for (int i = 0; i < MOST_TRIES; i++) {
      try (Socket probe = new Socket(InetAddress.getLoopbackAddress(), port)) {
        if (probe.isConnected()) {
          return;
        }
      } catch (IOException notYet) {
        pause();
      }
    }
    close();
    throw new IllegalStateException("the peer does not listen on port " + port);
  }

  private static void pause() {
    try {
      Thread.sleep(PAUSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  public int port() {
    return port;
  }

  /** Ends it at once, as a power cut would. */
  public void kill() {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
    try {
      process.waitFor(10, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Starts it again on the same port. */
  public void restart() throws IOException {
    start();
  }

  @Override
  public void close() {
    kill();
  }
}
