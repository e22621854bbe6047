package org.vestibule.dicom;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/** Bytes that are written one after another, of which large runs are copied only at the end. */
final class Assembly extends ByteArrayOutputStream {

  private static final int LARGE = 1 << 16;

  private final List<Run> runs = new ArrayList<>();

  /** A large run, and how many of the other bytes stand before it. */
  private record Run(int after, Bytes bytes) {}

  void append(Bytes bytes) {
    if (bytes.length() < LARGE) {
      bytes.writeTo(this);
    } else {
      runs.add(new Run(count, bytes));
    }
  }

  /** All of it after these bytes. */
  byte[] after(byte[] head) {
    int length = Math.addExact(head.length, count);
    for (Run run : runs) {
      length = Math.addExact(length, run.bytes().length());
    }
    byte[] all = new byte[length];
    System.arraycopy(head, 0, all, 0, head.length);
    int at = head.length;
    int written = 0;
    for (Run run : runs) {
      System.arraycopy(buf, written, all, at, run.after() - written);
      at += run.after() - written;
      written = run.after();
      run.bytes().copyTo(all, at);
      at += run.bytes().length();
    }
    System.arraycopy(buf, written, all, at, count - written);
    return all;
  }
}
