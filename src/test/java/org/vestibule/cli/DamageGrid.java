package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/**
 * Flips one bit at seeded places of a practice's files, sees whether it is told, mends it by the
 * documented steps, and asks for the same answers as before. As a program it does so for hundreds
 * of places and prints how many were told.
 */
final class DamageGrid {

  /** How a flipped bit ended. */
  enum End {
    /** verify says so. */
    TOLD,
    /**
     * verify does not say so, and SQLite's own copy of what the file holds is byte for byte the
     * same: the bit lies where nothing is stored.
     */
    IN_UNUSED_BYTES,
    /** verify does not say so, and every answer is as before. */
    UNSEEN_AND_WITHOUT_EFFECT,
    /** verify does not say so, and an answer is another. */
    UNSEEN
  }

  private static final List<List<String>> QUESTIONS =
      List.of(List.of("find", "frontal"), List.of("find", "occlusal"), List.of("waiting"));

  private final Path folder;
  private final Path sound;
  private final Path backup;
  private final List<String> ids = new ArrayList<>();
  private final List<String> answers;
  private final List<String> untold = new ArrayList<>();
  private int number;

  /** Lays out a practice with two filed photographs, one that waits, and a backup. */
  DamageGrid(Path folder) throws IOException {
    this.folder = folder;
    TestHome home = TestHome.in(folder.resolve("sound"));
    this.sound = home.folder();
    this.backup = folder.resolve("backup");
    ids.add(home.put("a.jpg", Scene.FRONTAL, 1));
    ids.add(home.put("b.jpg", Scene.UPPER_OCCLUSAL, 2));
    home.put("c.jpg", Scene.FRONTAL, 3);
    home.manifest(
        """
        file,visit,view,mirror,incisors,crop
        a.jpg,V1,frontal,none,,
        b.jpg,V1,lower occlusal,as shot,top,0.1 0.1 0.9 0.9
        """);
    assertThat(Asked.by("Ada", home, "ingest", "--at-once").code()).isEqualTo(1);
    assertThat(ask(sound, "backup", "--to", backup.toString()).code()).isZero();
    this.answers = answers(sound);
  }

  Asked ask(Path home, String... words) {
    return Asked.in(folder, Map.of("VESTIBULE_HOME", home.toString()), words);
  }

  private List<String> answers(Path home) {
    List<String> all = new ArrayList<>();
    for (List<String> question : QUESTIONS) {
      all.add(ask(home, question.toArray(String[]::new)).out());
    }
    for (String id : ids) {
      all.add(ask(home, "show", id).out());
      all.add(ask(home, "show", id, "--history").out());
    }
    return all;
  }

  private Path fresh() throws IOException {
    Path copy = folder.resolve("home" + number++);
    try (Stream<Path> all = Files.walk(sound)) {
      for (Path file : all.toList()) {
        Files.copy(
            file,
            copy.resolve(sound.relativize(file).toString()),
            java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    return copy;
  }

  private static void remove(Path home) throws IOException {
    try (Stream<Path> all = Files.walk(home)) {
      for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  /** One bit of one file, both drawn; the file's name with the place. */
  private static String flip(Path under, Random random) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(under)) {
      files =
          all.filter(Files::isRegularFile)
              .filter(file -> file.toFile().length() > 0)
              .sorted()
              .toList();
    }
    Path file = files.get(random.nextInt(files.size()));
    byte[] bytes = Files.readAllBytes(file);
    int at = random.nextInt(bytes.length);
    bytes[at] ^= (byte) (1 << random.nextInt(8));
    Files.write(file, bytes);
    return file.getFileName() + " at " + at;
  }

  private void soundAgain(Path home, String where) {
    Asked verified = ask(home, "verify");
    assertThat(verified.out()).as(where).endsWith("Everything is as it was kept.\n");
    assertThat(answers(home)).as(where).isEqualTo(answers);
  }

  private static void inWords(Asked asked, String where) {
    assertThat(asked.code()).as(where + asked.err()).isNotEqualTo(70);
    assertThat(asked.err() + asked.out())
        .as(where)
        .isNotBlank()
        .doesNotContain("Exception")
        .doesNotContain("\tat ");
  }

  End object(long seed) throws IOException {
    Path home = fresh();
    String where = "seed " + seed + ", " + flip(home.resolve("objects"), new Random(seed));
    Asked told = ask(home, "verify");
    inWords(told, where);
    assertThat(told.code()).as(where).isEqualTo(4);
    assertThat(told.out()).as(where).contains("was kept with");
    Asked dry = ask(home, "repair", "--from", backup.toString(), "--dry-run");
    assertThat(dry.code()).as(where).isZero();
    assertThat(ask(home, "verify").code()).as(where).isEqualTo(4);
    Asked mended = ask(home, "repair", "--from", backup.toString());
    assertThat(mended.code()).as(where + mended.out()).isZero();
    assertThat(mended.out()).as(where).startsWith("1 object brought back from the backup");
    soundAgain(home, where);
    remove(home);
    return End.TOLD;
  }

  End index(long seed) throws IOException {
    Path home = fresh();
    String where = "seed " + seed + ", " + flip(home.resolve("index"), new Random(seed));
    Asked told = ask(home, "verify");
    inWords(told, where);
    Asked mended = ask(home, "repair");
    inWords(mended, where);
    assertThat(mended.code()).as(where + mended.out()).isZero();
    soundAgain(home, where);
    remove(home);
    return told.code() == 0 ? End.UNSEEN_AND_WITHOUT_EFFECT : End.TOLD;
  }

  End ledger(long seed) throws IOException {
    Path home = fresh();
    String where = "seed " + seed + ", ";
    Random random = new Random(seed);
    byte[] bytes = Files.readAllBytes(home.resolve("ledger.sqlite"));
    int at = random.nextInt(bytes.length);
    while (bytes[at] == 0) {
      // Most of a small ledger's file is unused and empty.
      at = random.nextInt(bytes.length);
    }
    bytes[at] ^= (byte) (1 << random.nextInt(8));
    Files.write(home.resolve("ledger.sqlite"), bytes);
    where += "ledger at " + at;
    Asked told = ask(home, "verify");
    inWords(told, where);
    End end = End.TOLD;
    if (told.code() == 0) {
      end = answers(home).equals(answers) ? End.UNSEEN_AND_WITHOUT_EFFECT : End.UNSEEN;
      if (Arrays.equals(content(bytes), content(sound.resolve("ledger.sqlite")))) {
        end = End.IN_UNUSED_BYTES;
      }
      untold.add(end + " " + where + " of " + bytes.length + " bytes: " + around(bytes, at));
    }
    Asked restored = ask(home, "restore", "--ledger-only", "--from", backup.toString());
    assertThat(restored.code()).as(where + restored.err() + restored.out()).isZero();
    soundAgain(home, where);
    remove(home);
    return end;
  }

  private byte[] content(byte[] ledger) throws IOException {
    Path file = Files.write(folder.resolve("one.sqlite"), ledger);
    byte[] content = content(file);
    Files.delete(file);
    return content;
  }

  /** What a file holds, laid out anew by SQLite (lang_vacuum.html). */
  private byte[] content(Path file) throws IOException {
    Path copy = folder.resolve("content.sqlite");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
      statement.setString(1, copy.toString());
      statement.execute();
    } catch (SQLException unreadable) {
      return new byte[0];
    }
    byte[] content = Files.readAllBytes(copy);
    Files.delete(copy);
    return content;
  }

  /** What stands around a byte that was hit, for a person who wonders what it was. */
  private static String around(byte[] bytes, int at) {
    int from = Math.max(0, at - 40);
    return new String(
            bytes, from, Math.min(bytes.length, at + 40) - from, StandardCharsets.ISO_8859_1)
        .replaceAll("[^ -~]", ".");
  }

  Path sound() {
    return sound;
  }

  Path backup() {
    return backup;
  }

  /** How many places of each kind, and the first seed. */
  public static void main(String[] args) throws IOException {
    int count = Integer.parseInt(args[1]);
    long seed = Long.parseLong(args[2]);
    DamageGrid grid = new DamageGrid(Path.of(args[0]));
    Map<String, Integer> ends = new TreeMap<>();
    for (long next = seed; next < seed + count; next++) {
      ends.merge("object " + grid.object(next), 1, Integer::sum);
      ends.merge("index  " + grid.index(next), 1, Integer::sum);
      ends.merge("ledger " + grid.ledger(next), 1, Integer::sum);
    }
    grid.untold.forEach(System.out::println);
    ends.forEach((end, times) -> System.out.println(end + "  " + times));
    System.out.println("each of " + count + " places, first seed " + seed + ", is right again");
  }
}
