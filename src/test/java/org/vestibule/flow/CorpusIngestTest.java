package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.check.CheckReport;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.Corpus;

/**
 * Real photographs from end to end: every file still there, each filed or refused with a reason,
 * and each object's pixels equal to what libjpeg-turbo (jpegtran, djpeg) makes of the source.
 */
class CorpusIngestTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-25T06:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  @Test
  void everyFileIsFiledOrSaysWhyNot() throws Exception {
    Path photos = Corpus.require();
    Path inbox = folder.resolve("inbox");
    copy(photos, inbox);
    Files.writeString(
        folder.resolve("visits.csv"),
        "visit,patient id,name,start,end\nV1,P1,\"Tallgrass, Orla\",2026-03-12 09:00,10:00\n",
        StandardCharsets.UTF_8);
    Map<String, ContentHash> before = contents(inbox);
    Settings settings = Settings.defaults(folder, ZoneId.of("Europe/Vienna"));
    List<String> refused = new ArrayList<>();
    int filed = 0;
    try (Practice practice = Practice.open(folder, settings, CLOCK, true).orThrow()) {
      IngestRequest request =
          new IngestRequest(inbox, inbox.resolve("manifest.csv"), "nightly job", false, false);
      IngestReport report = Ingest.run(practice, request, Progress.NONE).orThrow();
      assertThat(report.filed()).as("nobody said whose they are").isEmpty();
      assertThat(report.waiting()).isNotEmpty();
      for (WaitingPhoto photo : new WaitingPhotos(practice).all()) {
        Outcome<FiledPhoto> outcome = new Corrections(practice).file(photo.id(), words());
        if (outcome instanceof Outcome.Refused<FiledPhoto> why) {
          refused.add(photo.name() + ": " + why.sentence());
          continue;
        }
        filed++;
        samePicture(practice, photo);
      }
      assertThat(Verify.run(practice)).isEmpty();
      for (String uid : practice.store().objects().list()) {
        byte[] object = practice.store().objects().get(uid).orElseThrow();
        assertThat(CheckReport.of(uid, object).errors()).as(uid).isZero();
      }
    }
    assertThat(contents(inbox)).as("the originals are untouched").isEqualTo(before);
    assertThat(filed).isPositive();
    System.err.println("corpus: " + filed + " filed by a person's word, refused:");
    refused.forEach(System.err::println);
  }

  private static PersonWords words() {
    return PersonWords.by("Bettany Tinderbell")
        .seenByPerson()
        .with(PhotoFact.VISIT, "V1")
        .with(PhotoFact.VIEW, "frontal")
        .with(PhotoFact.MIRROR, "none")
        .with(PhotoFact.UP, "top")
        .with(PhotoFact.TRIM, "yes");
  }

  /** Shown as the look sheet shows it, which is how the person above saw it. */
  private static void samePicture(Practice practice, WaitingPhoto photo) throws Exception {
    ExternalTool jpegtran = ExternalTool.require("jpegtran", "libjpeg-turbo-progs");
    ExternalTool djpeg = ExternalTool.require("djpeg", "libjpeg-turbo-progs");
    CaptureFacts facts = new SourceFiles(practice).facts(photo.hash());
    byte[] source = new SourceFiles(practice).bytes(photo.hash()).orThrow();
    Turn turn = facts.orientation() == null ? Turn.NONE : Turn.ofExif(facts.orientation());
    List<String> arguments = new ArrayList<>(List.of("-copy", "none", "-trim"));
    arguments.addAll(options(turn));
    byte[] turned = jpegtran.run(source, arguments.toArray(String[]::new)).output();
    byte[] object = new KeptPhoto(practice).jpeg(photo.id()).orThrow();

    byte[] expected = djpeg.run(turned, "-pnm").output();
    assertThat(expected).as(photo.name()).isNotEmpty();
    assertThat(ContentHash.of(djpeg.run(object, "-pnm").output()))
        .as(photo.name())
        .isEqualTo(ContentHash.of(expected));
  }

  private static List<String> options(Turn turn) {
    return switch (turn) {
      case NONE -> List.of();
      case FLIP_HORIZONTAL -> List.of("-flip", "horizontal");
      case FLIP_VERTICAL -> List.of("-flip", "vertical");
      case ROTATE_90 -> List.of("-rotate", "90");
      case ROTATE_180 -> List.of("-rotate", "180");
      case ROTATE_270 -> List.of("-rotate", "270");
      case TRANSPOSE -> List.of("-transpose");
      case TRANSVERSE -> List.of("-transverse");
    };
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Path target = to.resolve(from.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(target);
        } else {
          Files.copy(file, target);
        }
      }
    }
  }

  private static Map<String, ContentHash> contents(Path root) throws IOException {
    Map<String, ContentHash> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        contents.put(root.relativize(file).toString(), ContentHash.of(Files.readAllBytes(file)));
      }
    }
    return contents;
  }
}
