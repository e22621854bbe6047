package org.vestibule.forward;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.ReadableByteChannel;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSetWriter;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.dicom.net.Sendable;

/**
 * A note as it is sent to an archive that takes nothing but the default transfer syntax, implicit
 * VR little endian (PS3.5 10.1): the same values, laid without their value representations.
 */
final class ImplicitNote implements Sendable {

  private static final int LONGEST_FILE = 8 << 20;

  private final Parcel parcel;
  private final byte[] data;

  private ImplicitNote(Parcel parcel, byte[] data) {
    this.parcel = parcel;
    this.data = data;
  }

  /** True if this parcel may be sent so: a note that is written with its value representations. */
  static boolean isPossible(Parcel parcel) {
    return parcel.kind() == Parcel.Kind.NOTE
        && parcel.sizeBytes() <= LONGEST_FILE
        && parcel.transferSyntaxUid().equals(TransferSyntax.EXPLICIT_LITTLE_ENDIAN.uid());
  }

  static Outcome<Sendable> of(Parcel parcel) {
    try (InputStream in = parcel.source().open()) {
      return Part10Reader.read(in.readAllBytes())
          .then(file -> DataSetWriter.write(file.data(), TransferSyntax.IMPLICIT_LITTLE_ENDIAN))
          .map(data -> new ImplicitNote(parcel, data));
    } catch (IOException disk) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the object's file can't be read here",
          "look at the disk and at who may read that file, then run verify");
    }
  }

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
    return TransferSyntax.IMPLICIT_LITTLE_ENDIAN.uid();
  }

  @Override
  public long dataBytes() {
    return data.length;
  }

  @Override
  public ReadableByteChannel open() {
    return Channels.newChannel(new ByteArrayInputStream(data));
  }
}
