package org.vestibule.audit;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The home folder's own audit messages: one file a month (UTC), one message a line, only ever added
 * to. What a line holds is on the disk when {@link #append} returns. Each line is its time, one
 * space, and the message.
 */
final class AuditFile {

  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("uuuu-MM", Locale.ROOT).withZone(ZoneOffset.UTC);
  private static final String SUFFIX = ".log";
  private static final Object IN_THIS_PROCESS = new Object();

  private final Path folder;

  AuditFile(Path folder) {
    this.folder = folder;
  }

  /** Adds a message; several processes may do so at once. */
  void append(Instant at, String message) throws IOException {
    // A file lock holds against other processes, not against other threads of this one.
    synchronized (IN_THIS_PROCESS) {
      appendAlone(at, message);
    }
  }

  private void appendAlone(Instant at, String message) throws IOException {
    ownFolder();
    Path file = folder.resolve(MONTH.format(at) + SUFFIX);
    byte[] line = (AuditXml.time(at) + " " + message + "\n").getBytes(StandardCharsets.UTF_8);
    try (FileChannel channel = open(file);
        FileLock lock = channel.lock()) {
      closeCutLine(file, channel);
      ByteBuffer buffer = ByteBuffer.wrap(line);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
      lock.release();
    }
  }

  /** A line that a crash cut short is ended, so that it does not swallow the next one. */
  private static void closeCutLine(Path file, FileChannel channel) throws IOException {
    long size = channel.size();
    if (size == 0) {
      return;
    }
    ByteBuffer last = ByteBuffer.allocate(1);
    try (FileChannel read = FileChannel.open(file, StandardOpenOption.READ)) {
      read.read(last, size - 1);
    }
    if (last.get(0) != '\n') {
      channel.write(ByteBuffer.wrap(new byte[] {'\n'}));
    }
  }

  private FileChannel open(Path file) throws IOException {
    return FileChannel.open(
        file,
        Set.of(StandardOpenOption.CREATE, StandardOpenOption.APPEND),
        attributes("rw-------"));
  }

  private void ownFolder() throws IOException {
    if (!Files.isDirectory(folder)) {
      Files.createDirectories(folder, attributes("rwx------"));
    }
  }

  /** On Windows the home folder's own rights are inherited, which are its owner's alone. */
  private FileAttribute<?>[] attributes(String rights) {
    Path parent = folder.toAbsolutePath().getParent();
    boolean posix =
        parent != null && Files.getFileAttributeView(parent, PosixFileAttributeView.class) != null;
    return posix
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : new FileAttribute<?>[0];
  }

  /** The months' files, the oldest first. */
  List<Path> months() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> String.valueOf(file.getFileName()).matches("\\d{4}-\\d{2}\\.log"))
          .sorted()
          .toList();
    }
  }
}
