package org.vestibule.flow;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.stream.Stream;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;
import org.vestibule.store.steps.WriteSteps;

/**
 * A practice with one visit and three small photographs: {@code a.jpg}, a lower arch with a crop,
 * {@code b.jpg}, a frontal, and {@code c.jpg}, which waits for the place of its incisors.
 */
public final class SmallPractice {

  static final String WHO = "nightly job";

  static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);

  private static final String VISITS =
      """
      visit,patient id,name,birth date,sex,start,end
      V1,P1,"Tallgrass, Orla",1990-01-02,F,2026-03-12 09:00,2026-03-12 10:00
      """;

  private static final String MANIFEST =
      """
      file,visit,view,teeth,mirror,incisors,crop
      a.jpg,V1,lower occlusal,46,as shot,top,0.1 0.1 0.9 0.9
      b.jpg,V1,frontal,,none,,
      c.jpg,V1,upper occlusal,,as shot,,
      """;

  private final Path home;

  private SmallPractice(Path home) {
    this.home = home;
  }

  public static SmallPractice layOut(Path home) throws IOException {
    SmallPractice practice = new SmallPractice(home);
    Path inbox = Files.createDirectories(practice.inbox());
    Files.write(inbox.resolve("a.jpg"), photo(Scene.UPPER_OCCLUSAL, 5));
    Files.write(inbox.resolve("b.jpg"), photo(Scene.FRONTAL, 6));
    Files.write(inbox.resolve("c.jpg"), photo(Scene.UPPER_OCCLUSAL, 7));
    Files.writeString(inbox.resolve("manifest.csv"), MANIFEST, StandardCharsets.UTF_8);
    Files.writeString(home.resolve("visits.csv"), VISITS, StandardCharsets.UTF_8);
    return practice;
  }

  static SmallPractice at(Path home) {
    return new SmallPractice(home);
  }

  Path home() {
    return home;
  }

  /** A place for a backup that is no part of the home folder. */
  Path backup() {
    return home.resolveSibling(home.getFileName() + "-backup");
  }

  /** Lays so many frontal photographs more into the inbox. */
  void more(int photos) throws IOException {
    StringBuilder rows = new StringBuilder(MANIFEST);
    for (int i = 0; i < photos; i++) {
      Files.write(inbox().resolve("more" + i + ".jpg"), photo(Scene.FRONTAL, 10 + i));
      rows.append("more").append(i).append(".jpg,V1,frontal,,none,,\n");
    }
    Files.writeString(inbox().resolve("manifest.csv"), rows, StandardCharsets.UTF_8);
    try (Stream<Path> all = Files.list(inbox())) {
      for (Path file : all.toList()) {
        // A night leaves alone what was written a moment ago.
        Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2026-03-12T12:00:00Z")));
      }
    }
  }

  public Path inbox() {
    return home.resolve("inbox");
  }

  /** The photograph as it lay in the inbox at first. */
  public static byte[] photo(Scene scene, int minute) {
    return PhoneJpeg.builder(SampleRoll.picture(scene, 160, 128))
        .camera("Lumo", "Lumo P1")
        .takenAt(LocalDateTime.of(2026, 3, 12, 9, minute))
        .offset(ZoneOffset.ofHours(1))
        .orientation(1)
        .bytes();
  }

  public Settings settings() {
    return with("Practice at the Weir", VIENNA, LowerArchShown.INCISORS_DOWN);
  }

  /** The settings with everything changed that stands in an object or lays its picture. */
  Settings changed() {
    return with("Practice at the Old Mill", ZoneId.of("Europe/Lisbon"), LowerArchShown.INCISORS_UP);
  }

  /** The settings with this name, zone and lower arch. */
  Settings with(String name, ZoneId zone, LowerArchShown lowerArch) {
    return SettingsWith.shown(Settings.defaults(home, zone), name, lowerArch);
  }

  Practice open() throws IOException {
    return open(settings(), WriteSteps.PASS);
  }

  public Practice open(Settings settings, WriteSteps steps) throws IOException {
    return Practice.open(home, settings, CLOCK, true, steps).orThrow();
  }

  public IngestReport ingest(Practice practice) throws IOException {
    return Ingest.run(practice, request(), Progress.NONE).orThrow();
  }

  /** As the command does: pictures are made beside one another. */
  IngestReport ingestOnAllProcessors(Practice practice) throws IOException {
    return Ingest.run(practice, request().onAllProcessors(), Progress.NONE).orThrow();
  }

  private IngestRequest request() {
    return new IngestRequest(inbox(), inbox().resolve("manifest.csv"), WHO, false, false);
  }
}
