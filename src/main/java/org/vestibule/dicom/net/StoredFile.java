package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.vestibule.base.Outcome;

/**
 * A Part 10 file that can be sent, known by its file meta information alone (PS3.10 7.1).
 *
 * @param dataStart where its data set begins, in bytes
 * @param dataBytes the length of its data set, which is never read into memory as a whole
 */
public record StoredFile(
    Path path,
    String sopClass,
    String sopInstance,
    String transferSyntax,
    long dataStart,
    long dataBytes)
    implements Sendable {

  private static final int PREFIX_AT = 128;
  private static final int HEAD_BYTES = PREFIX_AT + 4 + 12;
  private static final int GROUP_LENGTH_AT = PREFIX_AT + 4 + 8;
  private static final int MOST_META_BYTES = 65536;

  /** Reads the head of a file, or says why it can't be sent. */
  public static Outcome<StoredFile> of(Path path) {
    try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
      return read(path, file);
    } catch (NoSuchFileException missing) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the file " + path.getFileName() + " is not there",
          "run verify to see what is missing");
    } catch (IOException broken) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the file " + path.getFileName() + " can't be read",
          "check the disk, and run verify");
    }
  }

  @Override
  public ReadableByteChannel open() throws IOException {
    FileChannel file = FileChannel.open(path, StandardOpenOption.READ);
    try {
      return file.position(dataStart);
    } catch (IOException broken) {
      file.close();
      throw broken;
    }
  }

  private static Outcome<StoredFile> read(Path path, FileChannel file) throws IOException {
    ByteBuffer head = bytes(file, 0, HEAD_BYTES);
    byte[] prefix = new byte[4];
    if (head.remaining() == HEAD_BYTES) {
      head.get(PREFIX_AT, prefix);
    }
    long length = head.remaining() == HEAD_BYTES ? head.getInt(GROUP_LENGTH_AT) & 0xFFFFFFFFL : 0;
    if (!new String(prefix, StandardCharsets.US_ASCII).equals("DICM")
        || head.getInt(PREFIX_AT + 4) != 0x00000002
        || length > MOST_META_BYTES) {
      return unfit(path);
    }
    ByteBuffer meta = bytes(file, HEAD_BYTES, (int) length);
    long start = HEAD_BYTES + length;
    long left = file.size() - start;
    if (meta.remaining() < length || left < 8) {
      return unfit(path);
    }
    return FileMeta.read(meta)
        .map(
            known ->
                Outcome.done(
                    new StoredFile(
                        path,
                        known.sopClass(),
                        known.sopInstance(),
                        known.transferSyntax(),
                        start,
                        left)))
        .orElseGet(() -> unfit(path));
  }

  private static Outcome<StoredFile> unfit(Path path) {
    return Outcome.refused(
        Outcome.Kind.DAMAGE,
        "the file " + path.getFileName() + " is no whole DICOM file",
        "run verify; a damaged object is restored from the backup");
  }

  private static ByteBuffer bytes(FileChannel file, long at, int length) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    while (bytes.hasRemaining() && file.read(bytes, at + bytes.position()) >= 0) {
      // read on
    }
    return bytes.flip();
  }
}
