package org.vestibule.dicom.net;

import java.io.Closeable;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.nio.channels.SocketChannel;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Makes the TCP connection to a remote entity. */
final class Connecting {

  private static final String LOOK = "check host and port, the network, and that it is running";

  private final RemoteEntity remote;
  private final long endNanos;

  private Connecting(RemoteEntity remote) {
    this.remote = remote;
    this.endNanos = System.nanoTime() + remote.timeouts().connect().toNanos();
  }

  static Connection to(RemoteEntity remote) throws NetFailure {
    return new Connecting(remote).connect();
  }

  private Connection connect() throws NetFailure {
    NetFailure last = NetFailure.passing(remote.words() + " has no address", LOOK);
    for (InetAddress address : addresses()) {
      try {
        return connect(address);
      } catch (IOException failure) {
        last =
            NetFailure.passing(
                left() <= 0
                    ? remote.words() + " did not take the connection in time"
                    : "nothing takes connections for " + remote.words(),
                LOOK);
      }
    }
    throw last;
  }

  private Connection connect(InetAddress address) throws IOException, NetFailure {
    SocketChannel channel = SocketChannel.open();
    Watchdog watchdog = new Watchdog(channel);
    try {
      watchdog.arm(Duration.ofNanos(Math.max(1, left())));
      channel.connect(new InetSocketAddress(address, remote.port()));
    } catch (IOException | RuntimeException failure) {
      watchdog.close();
      quietly(channel);
      throw failure;
    }
    return Connection.over(
        channel, watchdog, remote.tls(), remote.host(), remote.port(), remote.words());
  }

  /** The look-up has no time limit of its own, so somebody else waits for it. */
  private InetAddress[] addresses() throws NetFailure {
    CompletableFuture<InetAddress[]> found =
        CompletableFuture.supplyAsync(
            () -> {
              try {
                return InetAddress.getAllByName(remote.host());
              } catch (UnknownHostException unknown) {
                return new InetAddress[0];
              }
            });
    try {
      InetAddress[] addresses = found.get(left(), TimeUnit.NANOSECONDS);
      if (addresses.length > 0) {
        return addresses;
      }
      throw NetFailure.passing(
          "the network knows no computer named " + remote.host(), "check the name and the network");
    } catch (TimeoutException slow) {
      throw NetFailure.passing(
          "the network did not say in time where " + remote.host() + " is", LOOK);
    } catch (ExecutionException bug) {
      throw new IllegalStateException(bug);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw NetFailure.passing("the program was told to stop", "start it again");
    }
  }

  private long left() {
    return endNanos - System.nanoTime();
  }

  static void quietly(Closeable open) {
    try {
      open.close();
    } catch (IOException alreadyGone) {
      // Nothing is left to close, which is what was wanted.
    }
  }
}
