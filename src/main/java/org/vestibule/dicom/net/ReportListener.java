package org.vestibule.dicom.net;

import java.io.IOException;
import java.net.BindException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.vestibule.base.Outcome;

/**
 * Listens for storage commitment reports that come on an association of the archive's own (PS3.4
 * J.3.3), and answers echoes. Nothing can be sent to it and nothing asked of it.
 */
public final class ReportListener implements AutoCloseable {

  private static final int REJECTED_FOR_NOW = 2;
  private static final int BY_PRESENTATION = 3;
  private static final int CONGESTION = 1;
  private static final int IDLE_SECONDS = 10;

  private final ServerSocketChannel door;
  private final ListenerRules rules;
  private final ReportReceiver receiver;
  private final ThreadPoolExecutor workers;
  private final Set<SocketChannel> callers = ConcurrentHashMap.newKeySet();
  private final int port;

  private ReportListener(ServerSocketChannel door, ListenerRules rules, ReportReceiver receiver)
      throws IOException {
    this.door = door;
    this.rules = rules;
    this.receiver = receiver;
    this.port = ((InetSocketAddress) door.getLocalAddress()).getPort();
    this.workers =
        new ThreadPoolExecutor(
            0,
            rules.mostAtOnce(),
            IDLE_SECONDS,
            TimeUnit.SECONDS,
            new SynchronousQueue<>(),
            task -> daemon(task, "association-called"));
  }

  /** Begins to listen, or says why it can't. */
  public static Outcome<ReportListener> start(ListenerRules rules, ReportReceiver receiver) {
    try {
      ServerSocketChannel door = ServerSocketChannel.open();
      try {
        door.setOption(StandardSocketOptions.SO_REUSEADDR, true);
        door.bind(new InetSocketAddress(rules.address(), rules.port()));
        ReportListener listener = new ReportListener(door, rules, receiver);
        daemon(listener::accept, "association-door").start();
        return Outcome.done(listener);
      } catch (IOException failure) {
        door.close();
        throw failure;
      }
    } catch (BindException taken) {
      return Outcome.refused(
          Outcome.Kind.BUSY,
          "port " + rules.port() + " for storage commitment reports can't be opened",
          "see that no other program uses it, or name another port in the settings");
    } catch (IOException broken) {
      return Outcome.refused(
          "this computer's network does not let us listen on port " + rules.port(),
          "check the address in the settings");
    }
  }

  private static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }

  /** Where it listens. */
  public int port() {
    return port;
  }

  private void accept() {
    while (door.isOpen()) {
      try {
        hand(door.accept());
      } catch (ClosedChannelException ended) {
        return;
      } catch (IOException passing) {
        pause();
      }
    }
  }

  /** Out of file handles, say: trying again at once would only heat the room. */
  private static void pause() {
    try {
      Thread.sleep(100);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private void hand(SocketChannel caller) {
    callers.add(caller);
    try {
      workers.execute(
          () -> {
            try {
              new CalledSession(caller, rules, receiver).run();
            } finally {
              callers.remove(caller);
            }
          });
    } catch (RejectedExecutionException full) {
      callers.remove(caller);
      turnAway(caller);
    }
  }

  private void turnAway(SocketChannel caller) {
    receiver.turnedAway("a caller was turned away: " + rules.mostAtOnce() + " are here already");
    try (caller) {
      if (rules.tls().isEmpty()) {
        ByteBuffer words = Pdu.rejection(REJECTED_FOR_NOW, BY_PRESENTATION, CONGESTION).toBytes();
        caller.configureBlocking(false);
        caller.write(words);
      }
    } catch (IOException alreadyGone) {
      // It was to go anyway.
    }
  }

  /** Stops listening and breaks off what is going on. */
  @Override
  public void close() {
    Connecting.quietly(door);
    callers.forEach(Connecting::quietly);
    workers.shutdownNow();
  }
}
