package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.RunningPeer;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DataSetWriter;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;

/**
 * Objects that an archive has in another study than they were sent to, asked for level by level
 * (PS3.4 C.4.1.2.2.1) at dcmqrscp of DCMTK, which shares nothing with ours.
 */
@Timeout(60) // a guard against waiting for ever, not a measure
class ElsewhereQueryTest {

  private static final String EXPLICIT = "1.2.840.10008.1.2.1";
  private static final Archive.Form FORM = new Archive.Form(FiledObjects.PHOTO, EXPLICIT);

  /** Where we believe the objects to be. */
  private static final String SENT_STUDY = "2.25.10";

  @TempDir private Path folder;
  private RunningPeer peer;
  private ArchiveSession session;

  @BeforeEach
  void start() throws IOException {
    Path database = Files.createDirectories(folder.resolve("database"));
    Path settings =
        Files.writeString(
            folder.resolve("archive.cfg"),
            """
            MaxPDUSize = 16384
            MaxAssociations = 4
            HostTable BEGIN
            HostTable END
            VendorTable BEGIN
            VendorTable END
            AETable BEGIN
            ARCHIVE $DATABASE RW (200, 64mb) ANY
            AETable END
            """
                .replace("$DATABASE", database.toString()));
    peer = RunningPeer.ofToolkit("dcmqrscp", "-s", "-c", settings.toString());
    session = QueriedArchive.open(peer.port(), Set.of(FORM)).orThrow();
  }

  @AfterEach
  void stop() {
    session.close();
    peer.close();
  }

  private static Instance sent(String uid) {
    return new Instance(FiledObjects.PHOTO, uid, SENT_STUDY, "2.25.11");
  }

  /** Puts an object there, in this study, whatever we think of where it is. */
  private void put(String uid, String study, String series, String patient, String accession) {
    DataSet data =
        new DataSet()
            .put(Tags.SOPClassUID, FiledObjects.PHOTO)
            .put(Tags.SOPInstanceUID, uid)
            .put(Tags.StudyDate, "20260312")
            .put(Tags.StudyTime, "080000")
            .put(Tags.AccessionNumber, accession)
            .put(Tags.Modality, "XC")
            .put(Tags.PatientName, "Tallgrass^Orla")
            .put(Tags.PatientID, patient)
            .put(Tags.StudyInstanceUID, study)
            .put(Tags.SeriesInstanceUID, series)
            .put(Tags.StudyID, "1")
            .put(Tags.SeriesNumber, "1")
            .put(Tags.InstanceNumber, "1");
    byte[] bytes = DataSetWriter.write(data, new TransferSyntax(EXPLICIT)).orThrow();
    Parcel parcel =
        new Parcel(
            sent(uid),
            EXPLICIT,
            Parcel.Kind.PHOTO,
            () -> new ByteArrayInputStream(bytes),
            bytes.length,
            0);
    assertThat(session.store(parcel)).isEqualTo(new StoreAnswer.Accepted(0, "", Map.of()));
  }

  private static Map<String, String> shown(
      String study, String series, String patient, String accession) {
    return Map.of(
        "StudyInstanceUID", study,
        "SeriesInstanceUID", series,
        "PatientID", patient,
        "AccessionNumber", accession);
  }

  @Test
  void whatLiesInAnotherStudyIsFoundAndWhatIsNotThereIsNot() {
    put("2.25.1", SENT_STUDY, "2.25.11", "P1", "A-17");
    put("2.25.2", "2.25.99", "2.25.32", "P1", "A-17");
    put("2.25.3", "2.25.98", "2.25.33", "P1", "A-99");
    put("2.25.4", "2.25.97", "2.25.34", "P2", "A-98");
    put("2.25.6", "2.25.96", "2.25.35", "P3", "A-17");
    assertThat(
            ((PresenceAnswer.Answered) session.ask(List.of(sent("2.25.1"), sent("2.25.2"))))
                .found())
        .containsOnlyKeys("2.25.1");
    assertThat(
            session.lookElsewhere(
                List.of(
                    new Sought(sent("2.25.2"), "P1", "A-17"), // by either
                    new Sought(sent("2.25.6"), "P1", "A-17"), // by its accession number alone
                    new Sought(sent("2.25.3"), "P1", "A-17"), // by its patient alone
                    new Sought(sent("2.25.4"), "P1", "A-17"), // another patient's, another order's
                    new Sought(sent("2.25.5"), "P1", "A-17")))) // nowhere
        .isEqualTo(
            Map.of(
                "2.25.2", shown("2.25.99", "2.25.32", "P1", "A-17"),
                "2.25.3", shown("2.25.98", "2.25.33", "P1", "A-99"),
                "2.25.6", shown("2.25.96", "2.25.35", "P3", "A-17")));
  }

  @Test
  void withoutPatientAndAccessionNumberNothingIsSought() {
    put("2.25.2", "2.25.99", "2.25.32", "P1", "A-17");
    assertThat(session.lookElsewhere(List.of(new Sought(sent("2.25.2"), "", "")))).isEmpty();
    assertThat(session.lookElsewhere(List.of(new Sought(sent("2.25.2"), "P9", "")))).isEmpty();
  }
}
