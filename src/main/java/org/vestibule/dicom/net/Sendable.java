package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.channels.ReadableByteChannel;

/** An object that can be sent, with its data set's bytes as they are written in its syntax. */
public interface Sendable {

  String sopClass();

  String sopInstance();

  String transferSyntax();

  /** The length of the data set, at least 1. */
  long dataBytes();

  /** The data set from its first byte; a channel to a file is the fastest. */
  ReadableByteChannel open() throws IOException;
}
