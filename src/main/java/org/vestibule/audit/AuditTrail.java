package org.vestibule.audit;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Where audit messages go: first to the home folder's files, and from there to the site's syslog
 * server if there is one. With everything off, nothing is loaded and nothing is written.
 *
 * <p>For one process; several may write to one home folder at once.
 */
public final class AuditTrail implements AutoCloseable {

  private static final Duration PAUSE_AFTER_FAILURE = Duration.ofMinutes(1);

  private final AuditRules rules;
  private final Path folder;
  private final Clock clock;
  private @Nullable AuditEvents events;
  private boolean somethingNew;

  /**
   * @param home the practice's home folder; messages lie in its folder {@code audit}
   */
  public AuditTrail(AuditRules rules, Path home, Clock clock) {
    this.rules = rules;
    this.folder = home.resolve("audit");
    this.clock = clock;
  }

  /** False if nothing is to be told, so that whoever tells needs not gather it. */
  public boolean isOn() {
    return rules.on();
  }

  /** Makes the messages that {@link #record} takes. */
  public synchronized AuditEvents events() {
    AuditEvents made = events;
    if (made == null) {
      AuditPeer program =
          new AuditPeer(
              rules.source(), Long.toString(ProcessHandle.current().pid()), "", hostName());
      made = new AuditEvents(program, clock);
      events = made;
    }
    return made;
  }

  /**
   * Writes down a message; it is on the disk when this returns.
   *
   * @throws IOException if the disk fails: what can't be told of should not be done
   */
  public synchronized void record(AuditEvent event) throws IOException {
    if (!rules.on()) {
      return;
    }
    AuditSource source = new AuditSource(rules.source(), rules.site());
    new AuditFile(folder).append(event.at(), AuditXml.write(event, source));
    somethingNew = true;
  }

  /** Sends what is still to be sent; for long-running parts and the night. */
  public SendReport send() throws IOException {
    if (!rules.on() || rules.syslog().isEmpty()) {
      return SendReport.NOTHING;
    }
    SyslogFrame frame = new SyslogFrame(hostName(), ProcessHandle.current().pid());
    SendReport report = new SyslogSender(folder, rules.syslog().get(), clock, frame).send();
    Path down = folder.resolve("down");
    if (report.trouble().isEmpty()) {
      Files.deleteIfExists(down);
    } else {
      Files.writeString(down, report.trouble() + "\n");
      Files.setLastModifiedTime(down, FileTime.from(clock.instant()));
    }
    return report;
  }

  /** Sends what this process wrote, unless the server was out of reach a moment ago. */
  @Override
  public void close() throws IOException {
    if (somethingNew && rules.syslog().isPresent() && !failedJustNow()) {
      send();
    }
  }

  private boolean failedJustNow() throws IOException {
    Path down = folder.resolve("down");
    if (!Files.exists(down)) {
      return false;
    }
    Instant since = Files.getLastModifiedTime(down).toInstant();
    return Duration.between(since, clock.instant()).compareTo(PAUSE_AFTER_FAILURE) < 0;
  }

  private static String hostName() {
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException e) {
      return "localhost";
    }
  }
}
