package org.vestibule.store;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * Lets one run at a time write objects. The operating system ends the lock with the process, so a
 * killed run never locks out the next one; what it wrote into the file tells the next one of it.
 */
public final class RunLock implements AutoCloseable {

  /** Far behind the text, since Windows lets nobody read what is locked. */
  private static final long LOCKED_AT = Long.MAX_VALUE - 1;

  private static final int LONGEST_TEXT = 300;

  private final FileChannel channel;
  private final FileLock lock;
  private final String interrupted;

  private RunLock(FileChannel channel, FileLock lock, String interrupted) {
    this.channel = channel;
    this.lock = lock;
    this.interrupted = interrupted;
  }

  /**
   * @param what is going to run, such as {@code ingest}
   */
  static Outcome<RunLock> take(Path file, String what, Clock clock) throws IOException {
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    FileLock lock = tryLock(channel);
    String owner = read(channel);
    if (lock == null) {
      channel.close();
      return Outcome.refused(
          Outcome.Kind.BUSY,
          "another run is at work: " + (owner.isEmpty() ? "it has not said which" : owner),
          "wait until it has ended, or end that process; nothing was changed");
    }
    String self =
        what
            + ", process "
            + ProcessHandle.current().pid()
            + " on "
            + host()
            + " since "
            + clock.instant().truncatedTo(ChronoUnit.SECONDS);
    write(channel, self);
    return Outcome.done(new RunLock(channel, lock, owner));
  }

  private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock(LOCKED_AT, 1, false);
    } catch (OverlappingFileLockException sameProcess) {
      return null;
    }
  }

  private static String read(FileChannel channel) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(LONGEST_TEXT);
    channel.read(bytes, 0);
    return new String(bytes.array(), 0, bytes.position(), StandardCharsets.UTF_8).trim();
  }

  private static void write(FileChannel channel, String text) throws IOException {
    byte[] line = (text + "\n").getBytes(StandardCharsets.UTF_8);
    channel.truncate(0);
    channel.write(ByteBuffer.wrap(line, 0, Math.min(line.length, LONGEST_TEXT)), 0);
    channel.force(true);
  }

  private static String host() {
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException nameless) {
      return "this computer";
    }
  }

  /** The run before this one, if it was interrupted: what, which process, since when. */
  public Optional<String> interrupted() {
    return interrupted.isEmpty() ? Optional.empty() : Optional.of(interrupted);
  }

  @Override
  public void close() throws IOException {
    channel.truncate(0);
    lock.release();
    channel.close();
  }
}
