package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.Scene;

/** What leads to one camera and one place, as exiftool reads it too. */
class TracesTest {

  @TempDir Path folder;

  private static PhoneJpeg.Builder photo() {
    return TestHome.photo(Scene.FRONTAL, 1);
  }

  @Test
  void serialNumberAndPlaceAreThoseThatAnotherProgramReads() throws Exception {
    byte[] file = photo().bodySerial("QX-0917-A").position(47.5125, -30.2575, 3).bytes();
    Path at = Files.write(folder.resolve("photo.jpg"), file);
    List<String> theirs =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run("-s3", "-n", "-SerialNumber", "-GPSLatitude", "-GPSLongitude", at.toString())
            .text()
            .lines()
            .map(line -> line.replace("-30", "30"))
            .toList();
    assertThat(theirs).containsExactly("QX-0917-A", "47.5125", "30.2575");
    assertThat(Traces.of(file).texts()).containsAll(theirs);
    assertThat(Traces.of(file).texts())
        .contains("47 deg 30' 45", "30\u00b015'27", "47\u00b0 30' 45")
        .hasSizeLessThan(20);
  }

  @Test
  void paddingAndAFileWithoutExifHaveNone() throws IOException {
    assertThat(Traces.of(photo().bodySerial("0000000").bytes())).isEqualTo(Traces.NONE);
    assertThat(Traces.of(photo().position(0, 0, 3).bytes()).bytes()).isEmpty();
    assertThat(Traces.of(new byte[] {1, 2, 3})).isEqualTo(Traces.NONE);
  }

  /**
   * A rational is two whole numbers of four bytes, numerator first (TIFF 6.0 section 2, from
   * memory); exiftool says where in the file they stand by printing them.
   */
  @Test
  void aPositionIsKnownAsTheFileHoldsIt() throws Exception {
    byte[] file = photo().position(47.5125, -30.2575, 3).bytes();
    Path at = Files.write(folder.resolve("photo.jpg"), file);
    String verbose =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run("-v3", "-u", at.toString())
            .text();
    String theirs =
        verbose.lines().filter(line -> line.contains("GPSLatitude =")).findFirst().orElseThrow();
    String fractions = theirs.replaceFirst(".*\\(([^)]*)\\).*", "$1").strip();
    assertThat(fractions).matches("\\d+/\\d+ \\d+/\\d+ \\d+/\\d+");
    Traces traces = Traces.of(file);
    assertThat(traces.texts())
        .contains(fractions, fractions.replace(" ", ","), fractions.replace(" ", ", "));
    assertThat(traces.bytes()).hasSize(4);
    String whole = HexFormat.of().formatHex(file);
    assertThat(traces.bytes()).filteredOn(whole::contains).as("one byte order").hasSize(2);
  }

  @Test
  void numbersInXmpAreThoseThatAnotherProgramReads() throws Exception {
    String xmp =
        """
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
        <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
        <rdf:Description rdf:about="" xmlns:aux="http://ns.adobe.com/exif/1.0/aux/"
         xmlns:exif="http://ns.adobe.com/exif/1.0/" xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/"
         aux:SerialNumber="WR-55021" exif:GPSLatitude="47,30.7512N">
        <aux:LensSerialNumber>000LT9083</aux:LensSerialNumber>
        <xmpMM:DocumentID>xmp.did:7f2a90c1</xmpMM:DocumentID>
        </rdf:Description></rdf:RDF></x:xmpmeta>
        """;
    byte[] file = photo().xmp(xmp).bytes();
    Path at = Files.write(folder.resolve("photo.jpg"), file);
    List<String> theirs =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run(
                "-s3",
                "-XMP-aux:SerialNumber",
                "-XMP-aux:LensSerialNumber",
                "-XMP-xmpMM:DocumentID",
                at.toString())
            .text()
            .lines()
            .toList();
    assertThat(theirs).containsExactly("WR-55021", "000LT9083", "xmp.did:7f2a90c1");
    assertThat(Traces.of(file).texts()).containsAll(theirs).contains("47,30.7512");
  }

  /** Of a maker note whose layout nobody knows: what looks like a number, and no day or model. */
  @Test
  void runsInAMakerNoteAreTakenForSerialNumbers() throws IOException {
    byte[] note =
        "LUMO\0\1v2.1 \0Lumo P1 \0\0SN0088412\0 20260312 \0PHOTOMODE\0\377K7-00012-99\0"
            .getBytes(StandardCharsets.ISO_8859_1);
    assertThat(Traces.of(photo().makerNote(note).bytes()).texts())
        .containsExactlyInAnyOrder("SN0088412", "K7-00012-99");
  }

  /** Directories that are understood name their numbers. */
  @Test
  void whatADirectoryCallsASerialNumberIsOne() {
    Metadata metadata = new Metadata();
    ExifSubIFDDirectory known = new ExifSubIFDDirectory();
    known.setString(Tag.BODY_SERIAL, "B-77120");
    known.setString(Tag.LENS_MODEL, "Lens 55021");
    metadata.addDirectory(known);
    assertThat(SerialNumbers.inDirectories(metadata)).containsExactly("B-77120");
  }
}
