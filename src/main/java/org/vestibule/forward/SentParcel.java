package org.vestibule.forward;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import org.vestibule.dicom.net.Sendable;

/** A parcel as associations send it: its data set alone, without preamble and meta information. */
record SentParcel(Parcel parcel) implements Sendable {

  @Override
  public String sopClass() {
    return parcel.instance().sopClassUid();
  }

  @Override
  public String sopInstance() {
    return parcel.instance().sopInstanceUid();
  }

  @Override
  public String transferSyntax() {
    return parcel.transferSyntaxUid();
  }

  @Override
  public long dataBytes() {
    return parcel.sizeBytes() - parcel.dataSetOffsetBytes();
  }

  @Override
  public ReadableByteChannel open() throws IOException {
    ReadableByteChannel channel = parcel.source().openChannel();
    try {
      if (channel instanceof FileChannel file) {
        return file.position(parcel.dataSetOffsetBytes());
      }
      ByteBuffer head = ByteBuffer.allocate(parcel.dataSetOffsetBytes());
      while (head.hasRemaining()) {
        if (channel.read(head) < 0) {
          throw new EOFException("the object ends within its head");
        }
      }
      return channel;
    } catch (IOException broken) {
      channel.close();
      throw broken;
    }
  }
}
