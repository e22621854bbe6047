package org.vestibule.forward;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.ReadableByteChannel;

/**
 * An object that is to be sent, just as it lies on the disk.
 *
 * @param instance which one
 * @param transferSyntaxUid how the data set's bytes are laid
 * @param kind a photograph or the note that takes one back
 * @param source gives the whole Part 10 file from its first byte, each time anew
 * @param sizeBytes of the whole file
 * @param dataSetOffsetBytes where the data set begins behind preamble and file meta information
 *     (PS3.10 chapter 7)
 */
public record Parcel(
    Instance instance,
    String transferSyntaxUid,
    Kind kind,
    Source source,
    long sizeBytes,
    int dataSetOffsetBytes) {

  /** What an object is to a person. */
  public enum Kind {
    PHOTO,
    NOTE
  }

  /** Opens the file's bytes. */
  @FunctionalInterface
  public interface Source {
    InputStream open() throws IOException;

    /** The same as a channel, which a file of its own gives without copying. */
    default ReadableByteChannel openChannel() throws IOException {
      return Channels.newChannel(open());
    }
  }

  /** The form in which it is sent. */
  public Archive.Form form() {
    return new Archive.Form(instance.sopClassUid(), transferSyntaxUid);
  }
}
