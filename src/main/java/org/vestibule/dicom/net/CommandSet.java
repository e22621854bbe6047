package org.vestibule.dicom.net;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The elements of group 0000 that say what is asked or answered (PS3.7 6.3 and annex E), always
 * implicit VR little endian.
 */
final class CommandSet {

  static final int AFFECTED_SOP_CLASS = 0x0002;
  static final int REQUESTED_SOP_CLASS = 0x0003;
  static final int COMMAND_FIELD = 0x0100;
  static final int MESSAGE_ID = 0x0110;
  static final int ANSWERED_MESSAGE_ID = 0x0120;
  static final int PRIORITY = 0x0700;
  static final int DATA_SET_TYPE = 0x0800;
  static final int STATUS = 0x0900;
  static final int OFFENDING_ELEMENT = 0x0901;
  static final int ERROR_COMMENT = 0x0902;
  static final int AFFECTED_SOP_INSTANCE = 0x1000;
  static final int REQUESTED_SOP_INSTANCE = 0x1001;
  static final int EVENT_TYPE = 0x1002;
  static final int ACTION_TYPE = 0x1008;

  static final int STORE_RQ = 0x0001;
  static final int FIND_RQ = 0x0020;
  static final int ECHO_RQ = 0x0030;
  static final int EVENT_REPORT_RQ = 0x0100;
  static final int ACTION_RQ = 0x0130;
  static final int CANCEL_RQ = 0x0FFF;
  static final int ANSWER = 0x8000;

  static final int NO_DATA_SET = 0x0101;
  private static final int WITH_DATA_SET = 0x0001;
  private static final int ELEMENT_HEADER_BYTES = 8;

  private static final int MOST_USUAL_ELEMENTS = 12;

  /** In ascending order, as they are written; their values lie in the same places. */
  private int[] elements = new int[MOST_USUAL_ELEMENTS];

  private byte[][] values = new byte[MOST_USUAL_ELEMENTS][];
  private int count;

  /** A command of this kind, with a data set behind it or without. */
  static CommandSet of(int field, boolean withDataSet) {
    return new CommandSet()
        .put(COMMAND_FIELD, field)
        .put(DATA_SET_TYPE, withDataSet ? WITH_DATA_SET : NO_DATA_SET);
  }

  /** The answer to a request, about the same SOP class. */
  static CommandSet answerTo(CommandSet request, int status) {
    CommandSet answer =
        of(request.number(COMMAND_FIELD) | ANSWER, false)
            .put(ANSWERED_MESSAGE_ID, request.number(MESSAGE_ID))
            .put(STATUS, status);
    request.copyTo(answer, AFFECTED_SOP_CLASS);
    request.copyTo(answer, AFFECTED_SOP_INSTANCE);
    request.copyTo(answer, EVENT_TYPE);
    return answer;
  }

  private void copyTo(CommandSet other, int element) {
    byte[] value = value(element);
    if (value != null) {
      other.set(element, value);
    }
  }

  private byte @Nullable [] value(int element) {
    for (int i = 0; i < count && elements[i] <= element; i++) {
      if (elements[i] == element) {
        return values[i];
      }
    }
    return null;
  }

  private void set(int element, byte[] value) {
    int at = count;
    while (at > 0 && elements[at - 1] >= element) {
      at--;
    }
    if (at == count || elements[at] != element) {
      insert(at, element);
    }
    values[at] = value;
  }

  private void insert(int at, int element) {
    if (count == elements.length) {
      elements = Arrays.copyOf(elements, 2 * count);
      values = Arrays.copyOf(values, 2 * count);
    }
    System.arraycopy(elements, at, elements, at + 1, count - at);
    System.arraycopy(values, at, values, at + 1, count - at);
    elements[at] = element;
    count++;
  }

  CommandSet put(int element, int number) {
    set(element, new byte[] {(byte) number, (byte) (number >>> 8)});
    return this;
  }

  /** Puts a UID, padded with a NUL to an even length (PS3.5 6.2). */
  CommandSet put(int element, String uid) {
    byte[] letters = uid.getBytes(StandardCharsets.US_ASCII);
    byte[] even = new byte[letters.length + (letters.length & 1)];
    System.arraycopy(letters, 0, even, 0, letters.length);
    set(element, even);
    return this;
  }

  /** The number, or -1 where there is none. */
  int number(int element) {
    byte[] value = value(element);
    return value == null || value.length < 2 ? -1 : (value[0] & 0xFF) | (value[1] & 0xFF) << 8;
  }

  /** The text without padding; empty where there is none. */
  String text(int element) {
    byte[] value = value(element);
    return value == null
        ? ""
        : new String(value, StandardCharsets.ISO_8859_1).replace('\0', ' ').strip();
  }

  /** Tags that an answer complains of, as eight hexadecimal digits. */
  List<String> offending() {
    List<String> tags = new ArrayList<>();
    byte[] value = value(OFFENDING_ELEMENT);
    if (value == null) {
      return List.of();
    }
    ByteBuffer pairs = ByteBuffer.wrap(value).order(ByteOrder.LITTLE_ENDIAN);
    while (pairs.remaining() >= 4) {
      int group = pairs.getShort() & 0xFFFF;
      int element = pairs.getShort() & 0xFFFF;
      tags.add(String.format(Locale.ROOT, "%04X%04X", group, element));
    }
    return tags;
  }

  boolean hasDataSet() {
    return number(DATA_SET_TYPE) != NO_DATA_SET;
  }

  byte[] toBytes() {
    int length = 0;
    for (int i = 0; i < count; i++) {
      length += ELEMENT_HEADER_BYTES + values[i].length;
    }
    ByteBuffer out =
        ByteBuffer.allocate(ELEMENT_HEADER_BYTES + 4 + length).order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(0).putInt(4).putInt(length); // PS3.7 E.1: the group length
    for (int i = 0; i < count; i++) {
      out.putInt(elements[i] << 16).putInt(values[i].length).put(values[i]);
    }
    return out.array();
  }

  /** Understands these bytes, which the other side sent. */
  static CommandSet read(byte[] bytes, String peer) throws NetFailure {
    CommandSet command = new CommandSet();
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    while (in.remaining() >= ELEMENT_HEADER_BYTES) {
      int group = in.getShort() & 0xFFFF;
      int element = in.getShort() & 0xFFFF;
      long length = in.getInt() & 0xFFFFFFFFL;
      if (group != 0 || length > in.remaining()) {
        throw unreadable(peer);
      }
      byte[] value = new byte[(int) length];
      in.get(value);
      if (element != 0) {
        command.set(element, value);
      }
    }
    if (in.hasRemaining()
        || command.number(COMMAND_FIELD) < 0
        || command.number(DATA_SET_TYPE) < 0) {
      throw unreadable(peer);
    }
    return command;
  }

  private static NetFailure unreadable(String peer) {
    return NetFailure.broken(
        NetFailure.Abort.INVALID_PARAMETER, peer + " sent a command that can't be read");
  }
}
