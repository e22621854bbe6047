package org.vestibule.flow;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.vestibule.base.ContentHash;
import org.vestibule.forward.ForwardRules;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;
import org.vestibule.store.steps.WriteSteps;
import org.vestibule.words.Language;

/** The home folder of an invented practice with two visits, and small photographs for it. */
public final class TestHome {

  public static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  public static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);

  private static final String VISITS =
      """
      visit,patient id,name,birth date,sex,start,end
      V1,P1,"Tallgrass, Orla",1990-01-02,F,2026-03-12 09:00,2026-03-12 10:00
      V2,P2,"Brightwater, Ned",1971-05-06,M,2026-03-12 11:00,2026-03-12 12:00
      """;

  private static final Map<Scene, BufferedImage> PICTURES = new EnumMap<>(Scene.class);

  private final Path home;

  private TestHome(Path home) {
    this.home = home;
  }

  /** A fresh home in this folder, with the visits V1 (9 to 10) and V2 (11 to 12). */
  public static TestHome in(Path home) throws IOException {
    Files.createDirectories(home.resolve("inbox"));
    Files.writeString(home.resolve("visits.csv"), VISITS, StandardCharsets.UTF_8);
    return new TestHome(home);
  }

  public Path folder() {
    return home;
  }

  public Path inbox() {
    return home.resolve("inbox");
  }

  /**
   * A photograph of 160 by 128 samples, taken at this minute of nine o'clock on the visits' day.
   */
  public static PhoneJpeg.Builder photo(Scene scene, int minute) {
    BufferedImage picture =
        PICTURES.computeIfAbsent(scene, any -> SampleRoll.picture(any, 160, 128));
    return photo(picture, minute);
  }

  /** The same with a picture of one's own. */
  public static PhoneJpeg.Builder photo(BufferedImage picture, int minute) {
    return PhoneJpeg.builder(picture)
        .camera("Lumo", "Lumo P1")
        .takenAt(LocalDateTime.of(2026, 3, 12, 9, 0).plusMinutes(minute))
        .offset(ZoneOffset.ofHours(1));
  }

  /** Lays an upright photograph into the inbox; its id. */
  public String put(String name, Scene scene, int minute) throws IOException {
    return put(name, photo(scene, minute).orientation(1).bytes());
  }

  /** Lays a file into the inbox; its photograph's id. */
  public String put(String name, byte[] bytes) throws IOException {
    Path file = inbox().resolve(name);
    Files.createDirectories(file.getParent());
    Files.write(file, bytes);
    return ContentHash.of(bytes).hex().substring(0, 10);
  }

  /** Writes the manifest, the first row included. */
  public void manifest(String text) throws IOException {
    Files.writeString(inbox().resolve("manifest.csv"), text, StandardCharsets.UTF_8);
  }

  public Practice open() throws IOException {
    return open(WriteSteps.PASS);
  }

  /** A practice begun elsewhere. */
  public static Practice openAt(Path home) throws IOException {
    return Practice.open(home, Settings.defaults(home, ZONE), CLOCK, false).orThrow();
  }

  /** The practice at another time. */
  public Practice open(Clock clock) throws IOException {
    return Practice.open(home, Settings.defaults(home, ZONE), clock, true).orThrow();
  }

  /** The practice with archives to deliver to. */
  public Practice open(ForwardRules forward) throws IOException {
    Settings usual = Settings.defaults(home, ZONE);
    return Practice.open(
            home,
            new Settings(
                usual.practiceId(),
                usual.practiceName(),
                usual.zone(),
                usual.issuer(),
                usual.notation(),
                usual.lowerArch(),
                Language.ENGLISH,
                usual.inbox(),
                usual.objects(),
                usual.visits(),
                usual.views(),
                usual.settle(),
                usual.namePatterns(),
                usual.oneExport(),
                usual.captures(),
                usual.sorting(),
                usual.ageOfMajority(),
                usual.quality(),
                usual.night(),
                usual.web(),
                forward,
                usual.audit(),
                usual.worklist(),
                usual.door()),
            CLOCK,
            true)
        .orThrow();
  }

  Practice open(WriteSteps steps) throws IOException {
    return Practice.open(home, Settings.defaults(home, ZONE), CLOCK, true, steps).orThrow();
  }

  public IngestReport ingest() throws IOException {
    try (Practice practice = open()) {
      return ingest(practice);
    }
  }

  IngestReport ingest(Practice practice) throws IOException {
    return Ingest.run(practice, request(), Progress.NONE).orThrow();
  }

  IngestRequest request() {
    return new IngestRequest(inbox(), inbox().resolve("manifest.csv"), "nightly job", false, false);
  }

  /**
   * Every file below a folder with its bytes' hash and the time it was changed; folders by their
   * names only, since whoever reads a SQLite database touches its folder.
   */
  public static Map<String, String> everything(Path folder) throws IOException {
    Map<String, String> all = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.toList()) {
        all.put(folder.relativize(file).toString(), state(file));
      }
    }
    return all;
  }

  private static String state(Path file) throws IOException {
    return Files.isRegularFile(file)
        ? ContentHash.of(Files.readAllBytes(file)).hex()
            + " changed "
            + Files.getLastModifiedTime(file)
        : "folder";
  }

  /** The photograph with this id, by its whole hash. */
  public static ContentHash hash(Practice practice, String id) {
    return practice.store().ids().find(id).orThrow().hash();
  }
}
