package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.Intake;
import org.vestibule.intake.IntakeRules;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;

/** The sample practice's roll against what its table says should become of every file. */
class SampleListsAssignTest {

  private static final Path SAMPLES = Path.of("samples");
  private static final Map<String, Kind> REASONS =
      Map.of(
          "edited-copy", Kind.SAME_SHOT,
          "incisors-unknown", Kind.ORIENTATION,
          "nobody-named-it", Kind.NO_VIEW,
          "outside-visit", Kind.CONTRADICTION,
          "reflected-orientation", Kind.ORIENTATION,
          "front-camera", Kind.ORIENTATION);

  @Test
  void everyPhotographBecomesWhatItShould() throws IOException {
    Roll roll =
        Intake.read(
            SAMPLES.resolve("roll"),
            IntakeRules.DEFAULT,
            Clock.fixed(Instant.parse("2100-01-01T00:00:00Z"), ZoneOffset.UTC));
    RollAssigner assigner = assigner().forRoll(roll);
    assertThat(assigner.warnings()).isEmpty();
    Map<String, String> expected = new TreeMap<>();
    Map<String, String> found = new TreeMap<>();
    for (String line : Files.readAllLines(SAMPLES.resolve("expected.csv"))) {
      String[] cells = line.split(",", -1);
      // Edges that can't be flipped are the encoder's concern: assigned, it is fully known.
      boolean decided = cells[1].equals("filed") || cells[4].equals("edge-blocks");
      if (decided) {
        expected.put(cells[0], cells[2] + (cells[1].equals("filed") ? " " + cells[3] : " R\\F"));
      } else if (cells[1].equals("waits")) {
        expected.put(cells[0], cells[2] + " " + REASONS.get(cells[4]));
      }
    }
    for (Photo photo : roll.photos()) {
      // The roll may keep either of two files with the same content.
      String name = photo.arrival().name().replace("(1)", "");
      found.put(name, words(assigner.assign(photo, List.of()), expected.get(name)));
    }
    assertThat(found).isEqualTo(expected);
  }

  private static String words(Assignment assignment, @Nullable String expected) {
    if (assignment instanceof Assignment.Decided decided) {
      return decided.decision().view().key() + " " + decided.laid().shown().text();
    }
    Assignment.Waits waits = (Assignment.Waits) assignment;
    String view =
        waits.proposal().get(PhotoFact.VIEW) == null ? "" : waits.proposal().get(PhotoFact.VIEW);
    List<String> kinds =
        waits.reasons().stream().map(reason -> view + " " + reason.kind()).toList();
    return expected != null && kinds.contains(expected) ? expected : kinds.toString();
  }

  private static Assigner assigner() {
    return new Assigner(
        new AssignSources(
            VisitList.read(SAMPLES.resolve("visits.csv"), "").orThrow(),
            Manifest.read(SAMPLES.resolve("manifest.csv")).orThrow(),
            List.of(),
            true,
            List.of(),
            ViewCatalogue.standard(),
            new TeethReader(Notation.ISO_3950),
            LowerArchShown.INCISORS_DOWN,
            ZoneId.of("Europe/Vienna"),
            "Nightly"));
  }
}
