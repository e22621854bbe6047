package org.vestibule.forward;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.FileHead;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.objects.ObjectStore;

/** Makes a parcel of an object on the disk, of whose file only the head is read. */
final class ParcelReader {

  /** The shortest data set that there is: one element without a value. */
  private static final int LEAST_DATA_BYTES = 8;

  private final ObjectStore objects;

  ParcelReader(ObjectStore objects) {
    this.objects = objects;
  }

  /**
   * The object as it will be sent.
   *
   * @param sopUid of a note perhaps not yet in the row
   */
  Outcome<Parcel> read(DeliveryRow row, String sopUid) {
    try {
      return parcel(row, sopUid);
    } catch (IOException disk) {
      return unreadable();
    }
  }

  private Outcome<Parcel> parcel(DeliveryRow row, String sopUid) throws IOException {
    Parcel.Source source = source(sopUid);
    long size = objects.size(sopUid).orElse(-1);
    if (size < 0) {
      return damaged("is missing here");
    }
    Optional<FileHead> read;
    try (ReadableByteChannel file = source.openChannel()) {
      read = FileHead.read(file);
    }
    if (read.isEmpty() || size - read.get().dataStart() < LEAST_DATA_BYTES) {
      return damaged("is damaged here");
    }
    FileHead head = read.get();
    if (!head.sopInstance().equals(sopUid)) {
      return damaged("is not the one that its name says");
    }
    Outcome<Instance> instance =
        row.note() ? ofNote(head.sopClass(), sopUid) : ofPhoto(row, head.sopClass(), sopUid);
    return instance.map(
        known ->
            new Parcel(
                known,
                head.transferSyntax().uid(),
                row.note() ? Parcel.Kind.NOTE : Parcel.Kind.PHOTO,
                source,
                size,
                head.dataStart()));
  }

  private static Outcome<Instance> ofPhoto(DeliveryRow row, String sopClass, String sopUid) {
    String study = row.studyUid();
    String series = row.seriesUid();
    if (study == null || series == null) {
      throw new IllegalStateException("delivery " + row.number() + " knows no study");
    }
    return Outcome.done(new Instance(sopClass, sopUid, study, series));
  }

  private Outcome<Instance> ofNote(String sopClass, String sopUid) {
    return data(sopUid)
        .map(
            data ->
                new Instance(
                    sopClass,
                    sopUid,
                    data.string(Tags.StudyInstanceUID).orElse(""),
                    data.string(Tags.SeriesInstanceUID).orElse("")));
  }

  /** What an object says of itself. */
  Outcome<DataSet> data(String sopUid) {
    Optional<byte[]> bytes;
    try {
      bytes = objects.get(sopUid);
    } catch (IOException disk) {
      return unreadable();
    }
    if (bytes.isEmpty()) {
      return damaged("is missing here");
    }
    Outcome<DicomFile> read = Part10Reader.read(bytes.get());
    return read instanceof Refused<DicomFile>
        ? damaged("is damaged here")
        : read.map(DicomFile::data);
  }

  private Parcel.Source source(String sopUid) {
    Optional<Path> path = objects.path(sopUid);
    return path.isPresent()
        ? new FileSource(path.get())
        : () -> new ByteArrayInputStream(objects.get(sopUid).orElseThrow());
  }

  private record FileSource(Path path) implements Parcel.Source {
    @Override
    public InputStream open() throws IOException {
      return Files.newInputStream(path);
    }

    @Override
    public ReadableByteChannel openChannel() throws IOException {
      return FileChannel.open(path, StandardOpenOption.READ);
    }
  }

  /** A disk error, or no right to read it: that concerns this object and none of the others. */
  private static <T> Outcome<T> unreadable() {
    return Outcome.refused(
        Outcome.Kind.DAMAGE,
        "the object's file can't be read here",
        "look at the disk and at who may read that file, then run verify");
  }

  private static <T> Outcome<T> damaged(String what) {
    return Outcome.refused(
        Outcome.Kind.DAMAGE, "the object's file " + what, "run verify: it says what to do");
  }
}
