package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;
import org.vestibule.check.CheckReport;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.samples.SampleFolder;
import org.vestibule.samples.Truth;

/** The sample roll, end to end: what is filed, how it lies, what waits. */
class SampleRollTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);

  @TempDir private static Path home;

  private static IngestReport report;
  private static Map<String, String> idByFile;

  @BeforeAll
  static void ingest() throws IOException {
    SampleFolder.layOut(home);
    report = ingestAgain(false);
    idByFile = report.filed().stream().collect(Collectors.toMap(FiledPhoto::name, FiledPhoto::id));
  }

  @Test
  void filesAndKeepsWaitingWhatThePlanExpects() throws IOException {
    PlannedFate.holds(report);
  }

  @Test
  void filedPhotographsLieAsThePlanExpects() throws IOException {
    try (Practice practice = open()) {
      for (Map<String, String> row : SampleFolder.expected()) {
        if (row.get("expected").equals("filed")) {
          DataSet object = new KeptPhoto(practice).object(idByFile.get(row.get("file"))).orThrow();
          assertThat(String.join("\\", object.strings(Tags.PatientOrientation)))
              .as(row.get("file"))
              .isEqualTo(row.get("patient_orientation"));
        }
      }
    }
  }

  /**
   * The drawings from which the raw files were made by the geometry of mirrors are the truth: a
   * picture that lies otherwise differs from its drawing far more than one that lies as it must.
   */
  @Test
  void noPictureIsTheMirrorImageOfItsTruth() throws IOException {
    try (Practice practice = open()) {
      int compared = 0;
      for (Map.Entry<String, String> filed : idByFile.entrySet()) {
        BufferedImage truth = Truth.of(filed.getKey()).orElseThrow();
        byte[] jpeg = frame(practice, filed.getValue());
        BufferedImage shown = ImageIO.read(new ByteArrayInputStream(jpeg));
        double right = difference(shown, truth, false, false);
        assertThat(right)
            .as(filed.getKey())
            .isLessThan(0.5 * difference(shown, truth, true, false))
            .isLessThan(0.5 * difference(shown, truth, false, true))
            .isLessThan(0.5 * difference(shown, truth, true, true));
        compared++;
      }
      assertThat(compared).isGreaterThan(10);
    }
  }

  private static byte[] frame(Practice practice, String id) throws IOException {
    KeptPhoto kept = new KeptPhoto(practice);
    return kept.jpeg(id + "-frame") instanceof Outcome.Done<byte[]> frame
        ? frame.value()
        : kept.jpeg(id).orThrow();
  }

  @Test
  void everyObjectConforms() throws IOException {
    try (Stream<Path> files = Files.walk(home.resolve("objects"))) {
      List<Path> objects = files.filter(f -> f.toString().endsWith(".dcm")).toList();
      assertThat(objects).hasSizeGreaterThan(report.filed().size());
      for (Path object : objects) {
        CheckReport check = CheckReport.of("object", Files.readAllBytes(object));
        assertThat(check.words()).contains("conformant").doesNotContain("not conformant");
      }
    }
  }

  @Test
  void aSecondRunDoesNothingTwice() throws IOException {
    IngestReport again = ingestAgain(false);
    assertThat(again.filed()).isEmpty();
    assertThat(again.knownAlready()).isEqualTo(report.filed().size());
    assertThat(again.waiting()).hasSameSizeAs(report.waiting());
    try (Practice practice = open()) {
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  /** With one secret, the same photograph and decision are the same object on any day. */
  @Test
  void anotherStoreWithTheSameSecretMakesTheSameObjects(@TempDir Path other) throws IOException {
    Files.copy(
        home.resolve("practice.secret"),
        other.resolve("practice.secret"),
        StandardCopyOption.COPY_ATTRIBUTES);
    Files.copy(home.resolve("visits.csv"), other.resolve("visits.csv"));
    Path inbox = Files.createDirectories(other.resolve("inbox"));
    copy(home.resolve("inbox"), inbox);
    Settings settings = Settings.defaults(other, ZoneId.of("Europe/Vienna"));
    Clock later = Clock.offset(CLOCK, Duration.ofDays(40));
    try (Practice first = open();
        Practice second = Practice.open(other, settings, later, true).orThrow()) {
      Ingest.run(
              second,
              new IngestRequest(
                  inbox, inbox.resolve("manifest.csv"), "Somebody Else", false, false),
              Progress.NONE)
          .orThrow();
      assertThat(second.store().objects().list()).isEqualTo(first.store().objects().list());
      for (String uid : first.store().objects().list()) {
        assertThat(second.store().objects().get(uid).orElseThrow())
            .isEqualTo(first.store().objects().get(uid).orElseThrow());
      }
    }
  }

  @Test
  void theInboxIsLeftAsItWas() throws IOException {
    try (Stream<Path> files = Files.list(SampleFolder.roll())) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(home.resolve("inbox").resolve(file.getFileName().toString()))
            .hasSameBinaryContentAs(file);
      }
    }
  }

  private static IngestReport ingestAgain(boolean dryRun) throws IOException {
    try (Practice practice = open()) {
      Path inbox = home.resolve("inbox");
      IngestRequest request =
          new IngestRequest(
              inbox, inbox.resolve("manifest.csv"), "Bettany Tinderbell", dryRun, false);
      return Ingest.run(practice, request, Progress.NONE).orThrow();
    }
  }

  private static Practice open() throws IOException {
    Settings settings = Settings.defaults(home, ZoneId.of("Europe/Vienna"));
    return Practice.open(home, settings, CLOCK, true).orThrow();
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.list(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.copy(file, to.resolve(file.getFileName().toString()));
      }
    }
  }

  /** Mean difference per sample of the pictures' common part, the truth flipped if so asked. */
  private static double difference(
      BufferedImage shown, BufferedImage truth, boolean acrossFlipped, boolean downFlipped) {
    long sum = 0;
    int count = 0;
    for (int y = 0; y < shown.getHeight(); y += 5) {
      for (int x = 0; x < shown.getWidth(); x += 5) {
        double u = (x + 0.5) / shown.getWidth();
        double v = (y + 0.5) / shown.getHeight();
        int tx = (int) ((acrossFlipped ? 1 - u : u) * truth.getWidth());
        int ty = (int) ((downFlipped ? 1 - v : v) * truth.getHeight());
        sum += difference(shown.getRGB(x, y), truth.getRGB(tx, ty));
        count++;
      }
    }
    return (double) sum / count;
  }

  private static int difference(int a, int b) {
    return Math.abs((a >> 16 & 255) - (b >> 16 & 255))
        + Math.abs((a >> 8 & 255) - (b >> 8 & 255))
        + Math.abs((a & 255) - (b & 255));
  }
}
