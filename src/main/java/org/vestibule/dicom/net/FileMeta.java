package org.vestibule.dicom.net;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;

/**
 * What a sender needs of file meta information (PS3.10 table 7.1-1), picked out without reading the
 * rest as a data set: of hundreds of objects that was most of what sending cost here.
 */
record FileMeta(String sopClass, String sopInstance, String transferSyntax) {

  private static final int GROUP = 0x0002;
  private static final int SOP_CLASS = 0x0002;
  private static final int SOP_INSTANCE = 0x0003;
  private static final int TRANSFER_SYNTAX = 0x0010;

  /**
   * Value representations with four bytes of length (PS3.5 table 7.1-1), as far as group 2 goes.
   */
  private static final Set<Integer> LONG = Set.of(vr('O', 'B'), vr('U', 'N'), vr('U', 'R'));

  private static int vr(char first, char second) {
    return first << 8 | second;
  }

  /**
   * Reads the group behind its length.
   *
   * @param group explicit VR, little endian
   * @return empty if it can't be read or lacks one of the three
   */
  static Optional<FileMeta> read(ByteBuffer group) {
    String sopClass = "";
    String instance = "";
    String syntax = "";
    try {
      while (group.hasRemaining()) {
        int number = group.getShort() & 0xFFFF;
        int element = group.getShort() & 0xFFFF;
        byte[] value = new byte[length(group)];
        group.get(value);
        if (number != GROUP) {
          return Optional.empty();
        }
        switch (element) {
          case SOP_CLASS -> sopClass = uid(value);
          case SOP_INSTANCE -> instance = uid(value);
          case TRANSFER_SYNTAX -> syntax = uid(value);
          default -> {}
        }
      }
    } catch (BufferUnderflowException cut) {
      return Optional.empty();
    }
    return sopClass.isEmpty() || instance.isEmpty() || syntax.isEmpty()
        ? Optional.empty()
        : Optional.of(new FileMeta(sopClass, instance, syntax));
  }

  /** Of the value that comes now; nothing is allocated that is longer than what is left. */
  private static int length(ByteBuffer group) {
    int vr = (group.get() & 0xFF) << 8 | (group.get() & 0xFF);
    long length = group.getShort() & 0xFFFF;
    if (LONG.contains(vr)) {
      length = group.getInt() & 0xFFFFFFFFL;
    }
    if (length > group.remaining()) {
      throw new BufferUnderflowException();
    }
    return (int) length;
  }

  /** Without the NUL that makes its length even (PS3.5 9.4), or a blank that some write instead. */
  private static String uid(byte[] value) {
    int end = value.length;
    while (end > 0 && (value[end - 1] == 0 || value[end - 1] == ' ')) {
      end--;
    }
    return new String(value, 0, end, StandardCharsets.US_ASCII);
  }
}
