package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.vestibule.dicom.FileHead;

/** A Part 10 file that is sent as it lies there. */
record FileToSend(Path path, FileHead head, long dataBytes) implements Sendable {

  static FileToSend of(Path path) throws IOException {
    try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
      FileHead head = FileHead.read(file).orElseThrow();
      return new FileToSend(path, head, Files.size(path) - head.dataStart());
    }
  }

  long dataStart() {
    return head.dataStart();
  }

  @Override
  public String sopClass() {
    return head.sopClass();
  }

  @Override
  public String sopInstance() {
    return head.sopInstance();
  }

  @Override
  public String transferSyntax() {
    return head.transferSyntax().uid();
  }

  @Override
  public ReadableByteChannel open() throws IOException {
    return FileChannel.open(path, StandardOpenOption.READ).position(head.dataStart());
  }
}
