package org.vestibule.audit;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.audit.SentMark.Place;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.keys.TlsFailure;
import org.vestibule.keys.TlsSide;

/**
 * Sends what stands in the files and was not sent yet, oldest first. One process at a time; the
 * mark moves only after the messages before it have left, so a message comes twice if the
 * connection broke before it was certain that the server could read it. A server that neither ends
 * a connection nor breaks it off is taken to have read: see docs/audit.md for what that can't tell.
 */
final class SyslogSender {

  /** After so many messages the mark moves, so that a line that breaks repeats no more. */
  private static final int BATCH = 500;

  /** A line that is open longer than this is ended in order after the message at hand. */
  private static final Duration LINE = Duration.ofSeconds(20);

  /** A command waits no longer than this for a server that is slow; the rest is sent later. */
  private static final Duration ALL = Duration.ofSeconds(60);

  private static final Duration SILENCE = Duration.ofSeconds(5);

  private final Path folder;
  private final AuditRules.Syslog server;
  private final Clock clock;
  private final SyslogFrame frame;
  private final SentMark mark;
  private int sent;
  private int tooLong;

  SyslogSender(Path folder, AuditRules.Syslog server, Clock clock, SyslogFrame frame) {
    this.folder = folder;
    this.server = server;
    this.clock = clock;
    this.frame = frame;
    this.mark = new SentMark(folder);
  }

  SendReport send() throws IOException {
    if (!Files.isDirectory(folder)) {
      return SendReport.NOTHING;
    }
    try (FileChannel guard =
        FileChannel.open(
            folder.resolve("send.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      FileLock lock = tryLock(guard);
      return lock == null ? SendReport.NOTHING : locked();
    }
  }

  /** Null if another process, or another thread of this one, is sending. */
  private static @Nullable FileLock tryLock(FileChannel guard) throws IOException {
    try {
      return guard.tryLock();
    } catch (OverlappingFileLockException sameProcess) {
      return null;
    }
  }

  private SendReport locked() throws IOException {
    String trouble = "";
    long end = System.nanoTime() + ALL.toNanos();
    try {
      boolean more = isWaiting();
      while (more && trouble.isEmpty()) {
        trouble = end - System.nanoTime() <= 0 ? slow() : batch();
        more = trouble.isEmpty() && isWaiting();
      }
    } catch (IOException e) {
      trouble = words(e);
    }
    int waiting = trouble.isEmpty() ? 0 : Unsent.count(folder, mark.read());
    return new SendReport(sent, waiting, tooLong, trouble);
  }

  private String slow() {
    return "the syslog server "
        + server.host()
        + ":"
        + server.port()
        + " is slow: see whether it is overloaded; the messages are kept and sent later";
  }

  private boolean isWaiting() throws IOException {
    try (Unsent unsent = new Unsent(folder, mark.read())) {
      return !unsent.next().isEmpty();
    }
  }

  /** Sends one connection's worth; what stood in the way, or nothing. */
  private String batch() throws IOException {
    Outcome<SyslogLine> opened = open();
    if (!(opened instanceof Done<SyslogLine> done)) {
      return ((Refused<SyslogLine>) opened).sentence();
    }
    int count = 0;
    int skipped = 0;
    boolean certain;
    Place reached;
    try (SyslogLine line = done.value();
        Unsent unsent = new Unsent(folder, mark.read())) {
      reached = unsent.place();
      long end = System.nanoTime() + LINE.toNanos();
      for (int i = 0; i < BATCH && (i == 0 || end - System.nanoTime() > 0); i++) {
        List<String> next = unsent.next();
        if (next.isEmpty()) {
          break;
        }
        try {
          line.send(next.get(0), next.get(1));
          count++;
        } catch (MessageTooLongException e) {
          skipped++;
        }
        reached = unsent.place();
      }
      certain = line.settle();
    }
    if (!certain) {
      certain = isThere();
    }
    if (!certain) {
      return "the syslog server "
          + server.host()
          + ":"
          + server.port()
          + " did not end the connection and takes no other: see whether it runs; the messages are"
          + " kept and sent again";
    }
    mark.write(reached);
    sent += count;
    tooLong += skipped;
    return "";
  }

  /**
   * Whether the server can still be reached. One that keeps a connection open though it was told
   * goodbye has been sent everything, nothing was broken off, and the way to it works: that is all
   * that RFC 5425 lets one know, and sending again would only repeat it for ever.
   */
  private boolean isThere() throws IOException {
    Outcome<SyslogLine> again = open();
    if (again instanceof Done<SyslogLine> done) {
      done.value().close();
      return true;
    }
    return false;
  }

  private Outcome<SyslogLine> open() throws IOException {
    if (server.tls().isEmpty()) {
      return Outcome.done(new UdpLine(server.host(), server.port(), frame));
    }
    Outcome<TlsSide> side = server.tls().get().client(clock);
    if (side instanceof Refused<TlsSide> refused) {
      return refused.as();
    }
    return Outcome.done(new TlsLine(server.host(), server.port(), side.orThrow(), frame, SILENCE));
  }

  private String words(IOException failure) {
    String peer = server.host() + ":" + server.port();
    if (failure instanceof LineEndedException ended) {
      return "the syslog server "
          + peer
          + " "
          + ended.getMessage()
          + ", so that nobody knows what it has: see in its log why; the messages are kept and sent"
          + " again";
    }
    return TlsFailure.isTls(failure)
        ? ((Refused<?>) TlsFailure.refused(failure, "the syslog server " + peer)).sentence()
        : "the syslog server "
            + peer
            + " can't be reached: check that it runs; the messages are kept and sent later";
  }
}
