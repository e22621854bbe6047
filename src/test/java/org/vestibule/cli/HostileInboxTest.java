package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** An inbox full of what no phone wrote: every file is accounted for, and none is touched. */
class HostileInboxTest {

  private static final long SEED = 20260312;
  private static final String LONG = "l".repeat(251) + ".jpg";
  private static final List<String> ODD =
      List.of(
          "new\nline.jpg",
          "quote\"'`$(id).jpg",
          "\u202egpj.jpg",
          "\u001b[31mred.jpg",
          "tooth \ud83e\uddb7.jpg",
          "-rf.jpg",
          "=cmd.jpg",
          LONG);

  @TempDir Path folder;

  private TestHome home;

  @BeforeEach
  void fill() throws IOException {
    home = TestHome.in(folder);
    for (int i = 0; i < ODD.size(); i++) {
      home.put(ODD.get(i), Scene.FRONTAL, i);
    }
    System.out.println("HostileInboxTest seed " + SEED);
    Random random = new Random(SEED);
    for (int i = 0; i < 40; i++) {
      byte[] noise = new byte[random.nextInt(4000) + 1];
      random.nextBytes(noise);
      byte[] photo = TestHome.photo(Scene.FRONTAL, 30).bytes();
      System.arraycopy(photo, 0, noise, 0, i % 3 == 0 ? 0 : Math.min(noise.length, i * 20));
      home.put("noise" + i + ".jpg", noise);
    }
    home.put("empty.jpg", new byte[0]);
    Path inside = Files.createDirectories(home.inbox().resolve("x.jpg").resolve("y.jpg"));
    Files.createSymbolicLink(inside.resolve("loop.jpg"), home.inbox());
    Files.createSymbolicLink(home.inbox().resolve("self.jpg"), home.inbox().resolve("self.jpg"));
    Files.createSymbolicLink(home.inbox().resolve("away.jpg"), folder.resolve("visits.csv"));
  }

  @Test
  void ingestSortsIt() throws IOException {
    Map<String, String> before = TestHome.everything(home.inbox());
    Asked asked = Asked.by("Ada", home, "ingest", "--at-once");
    assertThat(asked.err()).isEmpty();
    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.out())
        .contains("0 photographs filed, ")
        .contains("empty.jpg\n    Why: it is empty")
        .contains("self.jpg\n    Why: ")
        .contains("away.jpg\n    Why: ")
        .contains("loop.jpg\n    Why: ")
        .contains("-rf.jpg\n", "=cmd.jpg\n", "tooth \ud83e\uddb7.jpg\n")
        .contains("new\\u000Aline.jpg\n");
    plain(asked);
    for (int i = 0; i < 40; i++) {
      assertThat(asked.out()).contains("noise" + i + ".jpg\n");
    }
    Asked waiting = Asked.of(home, "waiting", "--sheet", "w.html");
    assertThat(waiting.code()).isEqualTo(1);
    plain(waiting);
    plain(Asked.of(home, "find", "--state", "waiting"));
    assertThat(TestHome.everything(home.inbox())).isEqualTo(before);
    assertThat(Asked.of(home, "verify").code()).isZero();
    Asked again = Asked.by("Ada", home, "ingest", "--at-once");
    assertThat(again.out()).isEqualTo(asked.out());
  }

  @Test
  void lookShowsIt() throws IOException {
    Map<String, String> before = TestHome.everything(home.inbox());
    Path out = folder.resolve("out");
    Asked asked = Asked.in(folder, Map.of(), "look", "inbox", "--to", "out");
    assertThat(asked.err()).isEmpty();
    assertThat(asked.code()).isZero();
    String page = Files.readString(out.resolve("look.html"), StandardCharsets.UTF_8);
    assertThat(page).doesNotContain("\u202e").doesNotContain("\u001b");
    assertThat(page).contains("-rf.jpg", "noise39.jpg", LONG);
    assertThat(TestHome.everything(home.inbox())).isEqualTo(before);
  }

  @Test
  void filesAreFiledWhateverTheyAreCalled() {
    Asked.by("Ada", home, "ingest", "--at-once");
    String waiting = Asked.of(home, "waiting").out();
    String id =
        waiting.lines().filter(l -> l.contains("new\\u000Aline.jpg")).findFirst().orElseThrow();
    Asked filed =
        Asked.by(
            "Ada",
            home,
            "file",
            id.substring(0, 10),
            "--visit",
            "V1",
            "--view",
            "frontal",
            "--mirror",
            "none");
    assertThat(filed.err()).isEmpty();
    assertThat(filed.out()).contains("(new\\u000Aline.jpg): Orla Tallgrass");
  }

  /** Nothing that would steer a terminal or break a line's sense. */
  private static void plain(Asked asked) {
    assertThat(asked.out()).doesNotContain("\u202e").doesNotContain("\u001b");
    assertThat(asked.out().lines()).noneMatch(line -> line.startsWith("line.jpg"));
  }
}
