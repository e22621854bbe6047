package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeType;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.samples.SampleFolder;

/** What {@code find} prints: for people, for programs, and where files lie. */
class FindCommandTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);

  /** The keys of a photograph in the JSON answer, as docs/finding.md lists them. */
  private static final List<String> KEYS =
      List.of(
          "id",
          "date",
          "patient",
          "view",
          "teeth",
          "stage",
          "filed",
          "closeness",
          "sopInstanceUid");

  @TempDir private static Path home;

  private ByteArrayOutputStream out = new ByteArrayOutputStream();
  private ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeAll
  static void file() throws IOException {
    Path inbox = Files.createDirectories(home.resolve("inbox"));
    for (String name : List.of("IMG_0003.JPG", "IMG_0005.JPG", "IMG_0009.JPG")) {
      Files.copy(SampleFolder.roll().resolve(name), inbox.resolve(name));
    }
    List<String> manifest = Files.readAllLines(SampleFolder.manifest(), StandardCharsets.UTF_8);
    manifest.removeIf(row -> row.matches("IMG_.*") && !row.matches("IMG_000[359]\\.JPG.*"));
    Files.write(inbox.resolve("manifest.csv"), manifest, StandardCharsets.UTF_8);
    Files.copy(SampleFolder.visits(), home.resolve("visits.csv"));
    FindCommandTest first = new FindCommandTest();
    assertThat(first.run("ingest", "--at-once", "--by", "Ada Example"))
        .as("%s", first.err)
        .isEqualTo(ExitCode.NEEDS_A_PERSON.number());
  }

  @BeforeEach
  void fresh() {
    out = new ByteArrayOutputStream();
    err = new ByteArrayOutputStream();
  }

  private int run(String command, String... words) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    List<String> line = new ArrayList<>(List.of(command, "--home", home.toString()));
    line.addAll(List.of(words));
    return new Launcher(new Surroundings(console, Map.of(), home, CLOCK, ZoneOffset.UTC))
        .run(line.toArray(String[]::new));
  }

  private List<String> said() {
    return out.toString(StandardCharsets.UTF_8).lines().toList();
  }

  private String complained() {
    return err.toString(StandardCharsets.UTF_8).strip();
  }

  @Test
  void theTableSaysHowItWasUnderstoodAndWhy() {
    assertThat(run("find", "16")).isZero();
    assertThat(said().get(0)).isEqualTo("Understood: upper right first molar (16).");
    assertThat(said().get(1).split(" {2,}", -1))
        .containsExactly("date", "patient", "view", "teeth", "stage", "photograph", "why here");
    assertThat(said().get(2))
        .startsWith("2026-03-12  Odalys Quillfeather  Upper occlusal  upper right first molar (16)")
        .endsWith("named");
    assertThat(said().get(3)).contains("Right buccal").endsWith("usually in frame (one side)");
    assertThat(said()).hasSize(4);
  }

  @Test
  void whatWaitsIsMarked() {
    assertThat(run("find", "waiting")).isZero();
    assertThat(said()).hasSize(3);
    assertThat(said().get(2)).endsWith("not filed");
  }

  @Test
  void whatIsCutOffIsSaid() {
    assertThat(run("find", "16", "--most", "1")).isZero();
    assertThat(said()).hasSize(4).endsWith("and 1 more; --most shows more of them.");
    fresh();
    assertThat(run("find", "16", "--most", "1", "--paths")).isZero();
    assertThat(said()).hasSize(1);
    assertThat(complained()).isEqualTo("and 1 more; --most shows more of them.");
  }

  @Test
  void nothingFoundIsSaid() {
    assertThat(run("find", "26", "after")).isZero();
    assertThat(said())
        .containsExactly(
            "Understood: upper left first molar (26); stage after.", "No photograph answers that.");
    fresh();
    assertThat(run("find", "26", "after", "--paths")).isZero();
    assertThat(said()).isEmpty();
    assertThat(complained()).isEqualTo("No photograph answers that.");
    fresh();
    assertThat(run("find", "26", "after", "--json")).isZero();
    assertThat(String.join("", said())).isEqualTo("[ ]");
    assertThat(complained()).isEqualTo("No photograph answers that.");
  }

  @Test
  void theJsonHasTheSameKeysForEveryPhotograph() throws IOException {
    assertThat(run("find", "since", "march", "--json")).isZero();
    JsonNode rows = new ObjectMapper().readTree(out.toByteArray());
    assertThat(rows.isArray()).isTrue();
    assertThat(rows).hasSize(3);
    for (JsonNode row : rows) {
      List<String> keys = new ArrayList<>();
      row.fieldNames().forEachRemaining(keys::add);
      assertThat(keys).isEqualTo(KEYS);
      assertThat(row.get("filed").getNodeType()).isEqualTo(JsonNodeType.BOOLEAN);
      assertThat(row.get("sopInstanceUid").isNull()).isNotEqualTo(row.get("filed").booleanValue());
      assertThat(row.get("date").textValue()).matches("2026-03-1[0-9]");
    }
    assertThat(complained()).isEmpty();
  }

  @Test
  void theKeysAreDocumented() throws IOException {
    String document = Files.readString(Path.of("docs", "finding.md"), StandardCharsets.UTF_8);
    List<String> listed =
        document
            .substring(document.indexOf("## For programs"))
            .lines()
            .filter(line -> line.startsWith("| `"))
            .map(line -> line.split("`", -1)[1])
            .filter(KEYS::contains)
            .collect(Collectors.toList());
    assertThat(listed).isEqualTo(KEYS);
  }

  @Test
  void thePathsAreThoseOfTheObjectsAndOfTheFilesThatWait() throws IOException {
    assertThat(run("find", "since", "march", "--paths")).isZero();
    assertThat(said()).hasSize(3);
    for (String path : said()) {
      assertThat(Path.of(path)).isRegularFile();
    }
    assertThat(said()).filteredOn(path -> path.endsWith(".dcm")).hasSize(2);
    assertThat(said()).filteredOn(path -> path.endsWith("IMG_0009.JPG")).hasSize(1);
  }

  @Test
  void twoKindsOfAnswerAtOnceAreWrongUse() {
    assertThat(run("find", "16", "--json", "--paths")).isEqualTo(ExitCode.WRONG_USE.number());
    assertThat(complained())
        .isEqualTo("vestibule: --json and --paths are two answers: ask for one of them.");
    fresh();
    assertThat(run("find", "16", "--most", "0")).isEqualTo(ExitCode.WRONG_USE.number());
    assertThat(complained()).isEqualTo("vestibule: --most must be 1 or more but was 0.");
  }

  @Test
  void aRefusalIsOneReasonAndOneAdviceAndNamesNobody() {
    assertThat(run("find", "16", "quillfeathe")).isEqualTo(ExitCode.REFUSED.number());
    assertThat(said()).isEmpty();
    assertThat(complained().lines())
        .containsExactly(
            "vestibule: \"quillfeathe\" is not a word that is known here.",
            "  What to do: ask by tooth, view, stage, date, or a name in the record.");
    fresh();
    assertThat(run("find")).isEqualTo(ExitCode.REFUSED.number());
    assertThat(complained()).contains("the question is empty").contains("a bare #3 for a comment");
  }
}
