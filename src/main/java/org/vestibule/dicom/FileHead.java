package org.vestibule.dicom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;

/**
 * What a sender needs of the head of a Part 10 file (PS3.10 7.1 and table 7.1-1), picked out
 * without reading the rest as a data set: of hundreds of objects that was most of what sending cost
 * here.
 *
 * @param dataStart where the data set begins, in bytes from the beginning of the file
 */
public record FileHead(
    String sopClass, String sopInstance, TransferSyntax transferSyntax, int dataStart) {

  private static final byte[] PREFIX = {'D', 'I', 'C', 'M'};

  /** PS3.10 7.1: the preamble. */
  private static final int PREFIX_AT = 128;

  /** Preamble, prefix and the element that says how long the rest of the meta information is. */
  private static final int FIXED_BYTES = PREFIX_AT + 4 + 12;

  /** The group length element, explicit VR little endian: (0002,0000) UL with four bytes. */
  private static final byte[] GROUP_LENGTH = {2, 0, 0, 0, 'U', 'L', 4, 0};

  private static final int MOST_META_BYTES = 65536;

  /** As much as most heads have, so that one look at the disk is enough. */
  private static final int USUAL_BYTES = 1024;

  private static final int MOST_UID_BYTES = 64;

  /** Tag, value representation and two bytes of length; or two reserved and four of length. */
  private static final int SHORT_HEADER_BYTES = 8;

  private static final int LONG_HEADER_BYTES = 12;
  private static final int GROUP = 0x0002;
  private static final int SOP_CLASS = 0x0002;
  private static final int SOP_INSTANCE = 0x0003;
  private static final int TRANSFER_SYNTAX = 0x0010;

  /**
   * Value representations with four bytes of length (PS3.5 table 7.1-1), as far as group 2 goes.
   */
  private static final Set<Integer> LONG =
      Set.of(vr('O', 'B'), vr('U', 'C'), vr('U', 'N'), vr('U', 'R'), vr('U', 'T'));

  private static final int UI = vr('U', 'I');

  private static int vr(char first, char second) {
    return first << 8 | second;
  }

  /**
   * Reads the head.
   *
   * @param file at its first byte; at an unknown place afterwards
   * @return empty if this is no Part 10 file, if its head is cut or lacks one of the three, or if
   *     its transfer syntax is not one that we know
   */
  public static Optional<FileHead> read(ReadableByteChannel file) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(USUAL_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    fill(file, bytes);
    if (bytes.position() < FIXED_BYTES
        || !Arrays.equals(bytes.array(), PREFIX_AT, PREFIX_AT + 4, PREFIX, 0, 4)
        || !Arrays.equals(bytes.array(), PREFIX_AT + 4, FIXED_BYTES - 4, GROUP_LENGTH, 0, 8)) {
      return Optional.empty();
    }
    long length = bytes.getInt(FIXED_BYTES - 4) & 0xFFFFFFFFL;
    if (length > MOST_META_BYTES) {
      return Optional.empty();
    }
    int end = FIXED_BYTES + (int) length;
    if (end > bytes.capacity()) {
      bytes = ByteBuffer.allocate(end).order(ByteOrder.LITTLE_ENDIAN).put(bytes.flip());
      fill(file, bytes);
    }
    return bytes.position() < end ? Optional.empty() : group(bytes.array(), end);
  }

  private static void fill(ReadableByteChannel file, ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining() && file.read(bytes) >= 0) {
      // read on
    }
  }

  private static Optional<FileHead> group(byte[] head, int dataStart) {
    String sopClass = "";
    String instance = "";
    String syntax = "";
    int at = FIXED_BYTES;
    while (at < dataStart) {
      int value = valueStart(head, at, dataStart);
      long length = value < 0 ? 0 : valueLength(head, at);
      if (value < 0 || length > dataStart - value || uint16(head, at) != GROUP) {
        return Optional.empty();
      }
      int end = value + (int) length;
      int vr = vr(head, at);
      switch (uint16(head, at + 2)) {
        case SOP_CLASS -> sopClass = uid(vr, head, value, end);
        case SOP_INSTANCE -> instance = uid(vr, head, value, end);
        case TRANSFER_SYNTAX -> syntax = uid(vr, head, value, end);
        default -> {}
      }
      at = end;
    }
    return sopClass.isEmpty()
            || instance.isEmpty()
            || !(TransferSyntax.of(syntax) instanceof Outcome.Done<TransferSyntax> known)
        ? Optional.empty()
        : Optional.of(new FileHead(sopClass, instance, known.value(), dataStart));
  }

  private static int uint16(byte[] head, int at) {
    return (head[at] & 0xFF) | (head[at + 1] & 0xFF) << 8;
  }

  private static int vr(byte[] head, int at) {
    return vr((char) (head[at + 4] & 0xFF), (char) (head[at + 5] & 0xFF));
  }

  /** Where the value of the element begins, or -1 if its header is cut. */
  private static int valueStart(byte[] head, int at, int end) {
    if (end - at < SHORT_HEADER_BYTES) {
      return -1;
    }
    int start = at + (LONG.contains(vr(head, at)) ? LONG_HEADER_BYTES : SHORT_HEADER_BYTES);
    return start > end ? -1 : start;
  }

  private static long valueLength(byte[] head, int at) {
    return LONG.contains(vr(head, at))
        ? uint16(head, at + SHORT_HEADER_BYTES)
            | (long) uint16(head, at + SHORT_HEADER_BYTES + 2) << 16
        : uint16(head, at + SHORT_HEADER_BYTES - 2);
  }

  /**
   * Without the NUL that makes its length even (PS3.5 9.4), or a blank that some write instead;
   * empty if it is none (PS3.5 9.1).
   */
  private static String uid(int vr, byte[] head, int start, int padded) {
    int end = vr == UI ? padded : start;
    while (end > start && (head[end - 1] == 0 || head[end - 1] == ' ')) {
      end--;
    }
    for (int i = start; i < end; i++) {
      if (head[i] != '.' && (head[i] < '0' || head[i] > '9')) {
        return "";
      }
    }
    int length = end - start;
    return length > MOST_UID_BYTES
        ? ""
        : new String(head, start, length, StandardCharsets.US_ASCII);
  }
}
