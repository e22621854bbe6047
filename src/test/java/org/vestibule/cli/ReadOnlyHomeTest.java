package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/**
 * Somebody without the rights to write, or to read, in a home folder. Root may do everything, so
 * the commands run in a child process as nobody (uid 65534), by setpriv.
 */
class ReadOnlyHomeTest {

  private static final String NOBODY = "65534";

  @TempDir Path folder;

  @Test
  void eachCommandSaysThatItIsNotAllowedAndNothingIsChanged() throws Exception {
    Assumptions.assumeTrue(isRoot(), "SKIPPED: only root can become nobody");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    TestHome home = TestHome.in(folder.resolve("home"));
    String filed = home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest(
        """
        file,visit,view,mirror
        a.jpg,V1,frontal,none
        """);
    home.ingest();
    Path locked = Files.createDirectory(home.inbox().resolve("locked"));
    own(home.folder(), "r-x------", "r--------");
    Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("---------"));
    Map<String, String> before = TestHome.everything(home.folder());

    List<String> lines =
        List.of(
            "ingest",
            "file " + filed,
            "reject " + filed + " --why wrong",
            "find frontal",
            "show " + filed,
            "waiting",
            "verify",
            "visits add --visit V9 --patient P9 --name X,Y --from 2026-03-13T10:00"
                + " --until 2026-03-13T11:00");
    List<String> ends = asNobody(home.folder(), lines);

    assertThat(ends).hasSameSizeAs(lines);
    for (int i = 0; i < lines.size(); i++) {
      assertThat(ends.get(i))
          .as(lines.get(i))
          .startsWith("6 ")
          .contains("vestibule: ")
          .doesNotContain("Exception")
          .doesNotContain("\tat ")
          .doesNotContain(folder.toString());
    }
    assertThat(TestHome.everything(home.folder())).isEqualTo(before);
  }

  @Test
  void aFolderInTheInboxThatMayNotBeReadIsNamedAndTheRestIsTaken() throws Exception {
    Assumptions.assumeTrue(isRoot(), "SKIPPED: only root can become nobody");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    TestHome home = TestHome.in(folder.resolve("home"));
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("secret.jpg", Scene.FRONTAL, 2);
    home.put("locked/c.jpg", Scene.FRONTAL, 3);
    own(home.folder(), "rwx------", "rw-------");
    Files.setPosixFilePermissions(
        home.inbox().resolve("locked"), PosixFilePermissions.fromString("---------"));
    Files.setPosixFilePermissions(
        home.inbox().resolve("secret.jpg"), PosixFilePermissions.fromString("---------"));
    List<String> ends = asNobody(home.folder(), List.of("ingest --at-once"));
    assertThat(ends.get(0))
        .startsWith("1 ")
        .contains("locked", "secret.jpg", "can't be read", "1 waiting, 0 known from before");
  }

  private static boolean isRoot() {
    return System.getProperty("user.name").equals("root");
  }

  /** Hands everything to nobody, with these rights for folders and files. */
  private static void own(Path home, String folders, String files) throws Exception {
    ExternalTool.Result chown =
        ExternalTool.require("chown", "coreutils")
            .run("-R", NOBODY + ":" + NOBODY, home.toString());
    assertThat(chown.exitCode()).as(chown.errors()).isZero();
    List<Path> all;
    try (Stream<Path> walk = Files.walk(home)) {
      all = walk.toList();
    }
    for (Path file : all) {
      Files.setPosixFilePermissions(
          file, PosixFilePermissions.fromString(Files.isDirectory(file) ? folders : files));
    }
  }

  private List<String> asNobody(Path home, List<String> lines) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                "--reuid=" + NOBODY,
                "--regid=" + NOBODY,
                "--clear-groups",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Djava.io.tmpdir=" + Files.createTempDirectory(folder, "tmp"),
                "-cp",
                readable(),
                AskedAsNobody.class.getName(),
                home.toString()));
    command.addAll(lines);
    try (Stream<Path> inside = Files.list(folder)) {
      for (Path tmp : inside.filter(f -> f.getFileName().toString().startsWith("tmp")).toList()) {
        Files.setPosixFilePermissions(tmp, PosixFilePermissions.fromString("rwxrwxrwx"));
      }
    }
    ExternalTool.Result result =
        ExternalTool.require("setpriv", "util-linux").run(command.toArray(String[]::new));
    assertThat(result.exitCode()).as(result.errors()).isZero();
    return Stream.of(result.text().split("\u0000", -1)).filter(end -> !end.isBlank()).toList();
  }

  /** The classpath, copied to where nobody may read it. */
  private String readable() throws IOException {
    Path copy = folder.resolve("classpath");
    if (!Files.exists(copy)) {
      Files.createDirectory(copy);
    }
    List<String> entries = new ArrayList<>();
    int number = 0;
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      Path from = Path.of(entry);
      Path to = copy.resolve(number++ + "-" + from.getFileName());
      if (Files.isDirectory(from)) {
        copyTree(from, to);
      } else if (Files.isRegularFile(from)) {
        Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING);
        Files.setPosixFilePermissions(to, PosixFilePermissions.fromString("rw-r--r--"));
      }
      entries.add(to.toString());
    }
    return String.join(File.pathSeparator, entries);
  }

  private static void copyTree(Path from, Path to) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(from)) {
      all = walk.toList();
    }
    for (Path file : all) {
      Path target = to.resolve(from.relativize(file).toString());
      boolean isFolder = Files.isDirectory(file);
      if (isFolder) {
        Files.createDirectories(target);
      } else {
        Files.copy(file, target, StandardCopyOption.REPLACE_EXISTING);
      }
      Files.setPosixFilePermissions(
          target, PosixFilePermissions.fromString(isFolder ? "rwxr-xr-x" : "rw-r--r--"));
    }
  }
}
