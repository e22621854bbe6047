package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Visits, manifest and expectations agree with the plan, or disagree where they are meant to. */
class SampleListsTest {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm[:ss]", Locale.ROOT);

  private final List<Shot> plan = SampleRoll.plan();
  private final List<Map<String, String>> visits;
  private final List<Map<String, String>> manifest;
  private final List<Map<String, String>> expected;

  SampleListsTest() throws IOException {
    visits = SampleFolder.table(SampleFolder.visits());
    manifest = SampleFolder.table(SampleFolder.manifest());
    expected = SampleFolder.expected();
  }

  private static Map<String, String> row(
      List<Map<String, String>> table, String key, String value) {
    return table.stream().filter(r -> value.equals(r.get(key))).findFirst().orElseThrow();
  }

  @Test
  void everyFileOfTheRollHasOneExpectationAndNoOther() throws IOException {
    try (Stream<Path> files = Files.list(SampleFolder.roll())) {
      assertThat(expected.stream().map(r -> r.get("file")).toList())
          .containsExactlyInAnyOrderElementsOf(
              files.map(f -> String.valueOf(f.getFileName())).toList());
    }
    assertThat(expected)
        .allSatisfy(r -> assertThat(r.get("expected")).isIn("filed", "waits", "left-out"));
  }

  @Test
  void theManifestIsTrueOfEveryPhotographInIt() {
    for (Map<String, String> said : manifest) {
      Shot shot =
          plan.stream().filter(s -> s.file().equals(said.get("file"))).findFirst().orElseThrow();
      assertThat(LocalDateTime.parse(said.get("taken"), TIME))
          .as(shot.file())
          .isEqualTo(shot.taken());
      assertThat(row(visits, "visit", said.get("visit")).get("patient_id"))
          .as(shot.file())
          .isEqualTo(said.get("patient"));
      String incisors = said.get("incisors");
      if (!incisors.isEmpty()) {
        assertThat(incisors).as(shot.file()).isEqualTo(frontLies(shot.seen()));
      }
    }
  }

  /** Where the front of the mouth lies in the picture as seen. */
  private static String frontLies(RawState.Axes seen) {
    if (seen.right() == 'A') {
      return "right";
    }
    if (seen.right() == 'P') {
      return "left";
    }
    return seen.down() == 'A' ? "bottom" : "top";
  }

  @Test
  void whatShouldBeFiledIsFullyAndTrulyKnown() {
    for (Map<String, String> hope : expected) {
      if (!hope.get("expected").equals("filed")) {
        continue;
      }
      Shot shot =
          plan.stream().filter(s -> s.file().equals(hope.get("file"))).findFirst().orElseThrow();
      Map<String, String> said = row(manifest, "file", shot.file());
      assertThat(hope.get("patient_orientation")).isEqualTo(shot.scene().shownAs().toString());
      assertThat(said.get("mirror"))
          .as(shot.file())
          .isEqualTo(shot.mirrored() ? "as shot" : "none");
      assertThat(inside(row(visits, "visit", said.get("visit")), shot)).as(shot.file()).isTrue();
      assertThat(shot.camera()).as(shot.file()).isNotEqualTo("front");
      assertThat(shot.exif()).as(shot.file()).isIn(1, 3, 6, 8);
      assertThat(said.get("view").contains("occlusal") && said.get("incisors").isEmpty())
          .as(shot.file())
          .isFalse();
    }
  }

  private static boolean inside(Map<String, String> visit, Shot shot) {
    return !shot.taken().isBefore(LocalDateTime.parse(visit.get("start"), TIME))
        && !shot.taken().isAfter(LocalDateTime.parse(visit.get("end"), TIME));
  }

  @Test
  void whatShouldWaitHasTheReasonItIsSaidToHave() {
    for (Map<String, String> hope : expected) {
      if (!hope.get("expected").equals("waits")) {
        continue;
      }
      Shot shot =
          plan.stream().filter(s -> s.file().equals(hope.get("file"))).findFirst().orElseThrow();
      boolean holds =
          switch (hope.get("reason")) {
            case "edited-copy" -> shot.scene() == Scene.UPPER_ANTERIOR;
            case "edge-blocks" -> shot.mirrored() && shot.width() % 16 != 0;
            case "incisors-unknown" ->
                row(manifest, "file", shot.file()).get("incisors").isEmpty()
                    && shot.scene() == Scene.UPPER_OCCLUSAL;
            case "nobody-named-it" ->
                manifest.stream().noneMatch(r -> shot.file().equals(r.get("file")));
            case "outside-visit" ->
                !inside(
                    row(visits, "visit", row(manifest, "file", shot.file()).get("visit")), shot);
            case "reflected-orientation" -> Set.of(2, 4, 5, 7).contains(shot.exif());
            case "front-camera" -> shot.camera().equals("front");
            default -> false;
          };
      assertThat(holds).as(hope.toString()).isTrue();
    }
    assertThat(
            expected.stream()
                .filter(r -> r.get("expected").equals("waits"))
                .map(r -> r.get("reason"))
                .collect(Collectors.toSet()))
        .hasSize(7);
  }

  @Test
  void theCopyOfAnotherNameIsTheSameFile() throws IOException {
    assertThat(Files.readAllBytes(SampleFolder.roll().resolve("Copy of 20260312_104630.jpg")))
        .isEqualTo(Files.readAllBytes(SampleFolder.roll().resolve("20260312_104630.jpg")));
  }
}
