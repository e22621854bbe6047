package org.vestibule.release;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.check.SamplePhotograph;
import org.vestibule.dental.Teeth;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.TestHome;
import org.vestibule.intake.Traces;
import org.vestibule.samples.Scene;
import org.vestibule.words.Language;

/** A value that must not leave is planted wherever one could hide, and found there. */
class LeakSearchTest {

  private static final LeakSearch SEARCH =
      new LeakSearch(
          new Secrets(
              Set.of("Müller-Örn", "Tallgrass", "00417", "2.25.314159"),
              Set.of(LocalDate.of(2026, 3, 12))));

  private static boolean isFound(String name, byte[] bytes) throws IOException {
    return SEARCH.find(name, bytes).isPresent();
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] dicom(DataSet data) {
    return SamplePhotograph.file(data.put(Tags.SOPInstanceUID, "2.25.7"));
  }

  private static byte[] comment(byte[] jpeg, byte[] comment) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.write(0xFF);
    out.write(0xFE);
    out.write(0);
    out.write(comment.length + 2);
    out.writeBytes(comment);
    out.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  @Test
  void whatIsCleanIsClean() throws IOException {
    assertThat(isFound("index.html", text("<p>upper right first molar</p>"))).isFalse();
    assertThat(isFound("jpeg/copy-01.jpg", SamplePhotograph.jpeg())).isFalse();
    assertThat(isFound("dicom/copy-01.dcm", dicom(clean()))).isFalse();
    assertThat(isFound("contact-sheet.pdf", pdf("R-1"))).isFalse();
  }

  /** The sample without what the search looks for by chance. */
  private static DataSet clean() {
    return SamplePhotograph.data();
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "ISO-8859-1", "UTF-16LE", "UTF-16BE"})
  void aNameIsFoundInEachEncodingWhateverItsCase(String charset) throws IOException {
    byte[] hidden = "müLLER-örn".replace("ö", "ö").getBytes(Charset.forName(charset));
    assertThat(isFound("jpeg/copy-01.jpg", comment(SamplePhotograph.jpeg(), hidden))).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "20260312", "2026-03-12", "2026:03:12", "12.03.2026", "12.3.2026", "12/03/2026",
        "03/12/2026", "3/12/2026", "12 March 2026", "March 12, 2026", "12 Mar 2026", "12.03.26"
      })
  void aDayIsFoundInEachSpelling(String day) throws IOException {
    assertThat(isFound("manifest.json", text("{\"about\" : \"made on " + day + " here\"}")))
        .isTrue();
  }

  @Test
  void itIsFoundInsideSequencesAndInTheColourProfile() throws IOException {
    DataSet nested =
        clean().item(Tags.AnatomicRegionSequence).orElseThrow().put(Tags.CodeMeaning, "tallgrass");
    assertThat(isFound("a.dcm", dicom(clean().put(Tags.AnatomicRegionSequence, nested)))).isTrue();
    assertThat(isFound("a.dcm", dicom(clean().put(Tags.ICCProfile, text("for Tallgrass")))))
        .isTrue();
    assertThat(isFound("a.dcm", dicom(clean().put(Tags.SeriesInstanceUID, "2.25.314159"))))
        .isTrue();
  }

  @Test
  void itIsFoundInTheHeaderOfThePictureAndBehindItsEnd() throws IOException {
    byte[] jpeg = comment(SamplePhotograph.jpeg(), text("Tallgrass"));
    assertThat(isFound("a.dcm", dicom(clean().putFragments(Tags.PixelData, jpeg)))).isTrue();
    ByteArrayOutputStream trailed = new ByteArrayOutputStream();
    trailed.writeBytes(SamplePhotograph.jpeg());
    trailed.writeBytes(text("Tallgrass"));
    assertThat(isFound("a.jpg", trailed.toByteArray())).isTrue();
  }

  @Test
  void itIsFoundInTheSmallPicturesOfThePage() throws IOException {
    byte[] jpeg = comment(SamplePhotograph.jpeg(), text("Tallgrass"));
    String page = "<img src=\"data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg);
    assertThat(isFound("index.html", text(page + "\">"))).isTrue();
  }

  @Test
  void itIsFoundInTheSheet() throws IOException {
    assertThat(isFound("contact-sheet.pdf", pdf("Orla Tallgrass"))).isTrue();
    assertThat(isFound("contact-sheet.pdf", pdf("12.03.2026"))).isTrue();
  }

  @Test
  void itIsFoundInAFilesName() throws IOException {
    assertThat(isFound("jpeg/tallgrass-01.jpg", SamplePhotograph.jpeg())).isTrue();
    assertThat(isFound("jpeg/00417.jpg", SamplePhotograph.jpeg())).isTrue();
  }

  /** Values under six characters occur by chance: only whole fields count. */
  @Test
  void aShortValueIsFoundAsAWholeFieldOnly() throws IOException {
    assertThat(isFound("index.html", text("<p>00417</p>"))).isTrue();
    assertThat(isFound("index.html", text("<p>number 1004172</p>"))).isFalse();
    assertThat(isFound("manifest.json", text("{\n  \"a\" : \"00417\"\n}"))).isTrue();
    assertThat(isFound("a.dcm", dicom(clean().put(Tags.PatientID, "00417")))).isTrue();
    assertThat(isFound("a.dcm", dicom(clean().put(Tags.PatientID, "X004170")))).isFalse();
    assertThat(isFound("contact-sheet.pdf", pdf("00417"))).isTrue();
  }

  @Test
  void codedPictureDataIsLeftOut() {
    byte[] jpeg = SamplePhotograph.jpeg();
    byte[] rest = CodedPicture.without(jpeg, 0);
    assertThat(rest.length).isLessThan(jpeg.length);
    assertThat(rest).endsWith(0xFF, 0xD9);
  }

  private static byte[] pdf(String who) throws IOException {
    String small = Base64.getEncoder().encodeToString(SamplePhotograph.jpeg());
    SheetRow row =
        new SheetRow("copy-01", who, "day 0", "Frontal", Teeth.NONE, null, small, 64, 48);
    return PdfSheet.of(
        new Sheet(
            "Photographs",
            List.of("Release 2026-001"),
            List.of(row),
            new SheetWords(Language.ENGLISH)),
        1);
  }

  /** A copy into which the original's Exif data came: no text in it is the position. */
  @Test
  void aPositionIsFoundInTheBytesOfAFile() throws IOException {
    byte[] leaking = TestHome.photo(Scene.FRONTAL, 1).position(47.5125, -30.2575, 3).bytes();
    byte[] clean = TestHome.photo(Scene.FRONTAL, 1).bytes();
    Traces traces = Traces.of(leaking);
    assertThat(new LeakSearch(new Secrets(traces.texts(), Set.of())).find("copy.jpg", leaking))
        .as("texts alone don't find it")
        .isEmpty();
    LeakSearch search = new LeakSearch(new Secrets(traces.texts(), Set.of(), traces.bytes()));
    assertThat(search.find("copy.jpg", leaking)).contains("copy.jpg holds a position");
    assertThat(search.find("copy.jpg", clean)).isEmpty();
  }
}
