package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** The steps of docs/backup.md, run as they stand there. */
class BackupDocumentTest {

  @TempDir private Path folder;

  private List<Asked> run(String section) throws IOException {
    List<Asked> ends = new ArrayList<>();
    boolean inside = false;
    for (String line : Files.readAllLines(Path.of("docs", "backup.md"), StandardCharsets.UTF_8)) {
      inside = line.startsWith("## ") ? line.equals("## " + section) : inside;
      if (inside && line.startsWith("    vestibule ")) {
        String real =
            line.strip()
                .replace("/srv/practice", folder.resolve("practice").toString())
                .replace("/mnt/", folder + "/");
        String[] words = real.split(" ");
        Asked asked =
            Asked.in(
                folder, Map.of(), List.of(words).subList(1, words.length).toArray(String[]::new));
        assertThat(asked.code()).as(line + asked.err() + asked.out()).isZero();
        ends.add(asked);
      }
    }
    assertThat(ends).as(section).isNotEmpty();
    return ends;
  }

  private Asked find() {
    return Asked.in(
        folder, Map.of("VESTIBULE_HOME", folder.resolve("practice").toString()), "find", "frontal");
  }

  @Test
  void everyStepEndsWellAndTheAnswersAreTheSame() throws IOException {
    TestHome home = TestHome.in(folder.resolve("practice"));
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.CHILD_FRONTAL, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\nb.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(2);
    Asked answer = find();
    run("Making a backup");

    List<Asked> restored = run("Restoring, or moving to a new machine");
    assertThat(restored.get(restored.size() - 1)).isEqualTo(answer);

    Path ledger = home.folder().resolve("ledger.sqlite");
    Files.writeString(ledger, "this is no database. ".repeat(500));
    assertThat(find().code()).isEqualTo(4);
    run("A damaged ledger");
    assertThat(find()).isEqualTo(answer);

    List<Path> objects;
    try (Stream<Path> all = Files.walk(home.folder().resolve("objects"))) {
      objects = all.filter(Files::isRegularFile).sorted().toList();
    }
    Files.delete(objects.get(0));
    byte[] bytes = Files.readAllBytes(objects.get(1));
    bytes[bytes.length / 2] ^= 1;
    Files.write(objects.get(1), bytes);
    run("Damaged or missing objects");
    try (Stream<Path> all = Files.walk(home.folder().resolve("set-aside"))) {
      assertThat(all.filter(file -> file.endsWith(objects.get(1).getFileName())).findFirst())
          .hasValueSatisfying(aside -> assertThat(aside).hasBinaryContent(bytes));
    }
    assertThat(find()).isEqualTo(answer);

    try (Stream<Path> all = Files.walk(home.folder().resolve("index"))) {
      for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
    run("A lost or damaged index");
    assertThat(find()).isEqualTo(answer);
  }
}
