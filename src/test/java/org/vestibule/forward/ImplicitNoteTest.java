package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.RunningPeer;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.FileHead;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.encode.NoteIdentity;
import org.vestibule.encode.RejectionNote;
import org.vestibule.encode.RejectionReason;

/** An archive that takes the default transfer syntax alone (PS3.5 10.1), played by DCMTK. */
class ImplicitNoteTest {

  private static final String UID = "2.25.9001";

  @TempDir private Path folder;

  private static byte[] note() {
    DataSet frame =
        new DataSet()
            .put(Tags.SpecificCharacterSet, "ISO_IR 192")
            .put(Tags.SOPClassUID, FiledObjects.PHOTO)
            .put(Tags.SOPInstanceUID, "2.25.1001")
            .put(Tags.StudyInstanceUID, "2.25.71")
            .put(Tags.SeriesInstanceUID, "2.25.72")
            .put(Tags.StudyDate, "20260314")
            .put(Tags.StudyTime, "070000")
            .put(Tags.AccessionNumber, "A-17")
            .put(Tags.ReferringPhysicianName, "")
            .put(Tags.StudyID, "1")
            .put(Tags.PatientName, "Blåbær^Ida")
            .put(Tags.PatientID, "P1")
            .put(Tags.PatientBirthDate, "19900101")
            .put(Tags.PatientSex, "F");
    return RejectionNote.write(
            List.of(frame),
            new NoteIdentity(UID, "2.25.9002"),
            RejectionReason.of("blurred").orElseThrow(),
            LocalDateTime.of(2026, 3, 14, 7, 0, 5))
        .orThrow();
  }

  private static StoreAnswer send(int port, byte[] note) throws IOException {
    int start =
        FileHead.read(Channels.newChannel(new ByteArrayInputStream(note)))
            .orElseThrow()
            .dataStart();
    Parcel parcel =
        new Parcel(
            new Instance(RejectionNote.SOP_CLASS, UID, "2.25.71", "2.25.9002"),
            TransferSyntax.EXPLICIT_LITTLE_ENDIAN.uid(),
            Parcel.Kind.NOTE,
            () -> new ByteArrayInputStream(note),
            note.length,
            start);
    try (ArchiveSession session = QueriedArchive.open(port, Set.of(parcel.form())).orThrow()) {
      return session.store(parcel);
    }
  }

  private Path received(String syntaxes, byte[] note) throws IOException {
    Path there = Files.createDirectories(folder.resolve("received" + syntaxes));
    try (RunningPeer peer =
        RunningPeer.ofToolkit(
            "storescp", "-aet", "ARCHIVE", "-od", there.toString(), "+B", syntaxes)) {
      assertThat(send(peer.port(), note).words()).isEmpty();
    }
    try (Stream<Path> files = Files.list(there)) {
      return files.findFirst().orElseThrow();
    }
  }

  private static String syntax(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file)) {
      return FileHead.read(channel).orElseThrow().transferSyntax().uid();
    }
  }

  @Test
  void aNoteArrivesWithoutItsVrsWhereNothingElseIsTaken() throws Exception {
    byte[] note = note();
    Path ours = Files.write(folder.resolve("note.dcm"), note);
    Path theirs = received("+xi", note);
    assertThat(syntax(theirs)).isEqualTo("1.2.840.10008.1.2");
    ExternalTool json = ExternalTool.require("dcm2json", "dcmtk");
    assertThat(json.run(theirs.toString()).text())
        .as("every value with its value representation")
        .isEqualTo(json.run(ours.toString()).text())
        .contains("Blåbær")
        .doesNotContain("\"UN\"");
    assertThat(
            ExternalTool.require("dciodvfy", "dicom3tools").run(theirs.toString()).errors().strip())
        .isEqualTo("KeyObjectSelectionDocument");
  }

  @Test
  void elsewhereItArrivesAsItLies() throws Exception {
    assertThat(syntax(received("+xa", note()))).isEqualTo("1.2.840.10008.1.2.1");
  }
}
