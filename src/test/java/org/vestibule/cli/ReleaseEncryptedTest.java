package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** Copies that only open with a passphrase. */
class ReleaseEncryptedTest {

  private static final String WHO = "Reed, Ada";
  private static final String PASSPHRASE = "lantern Gravel 7 otter-plum";

  @TempDir Path folder;
  private TestHome home;
  private String photo;

  @BeforeEach
  void file() throws IOException {
    home = TestHome.in(folder);
    photo = home.put("frontal.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\nfrontal.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
  }

  private Asked make(String to, String... more) {
    List<String> words = new ArrayList<>(List.of("release", "make", "--to", to));
    words.addAll(List.of(more));
    if (!words.contains("--again")) {
      words.addAll(List.of(photo, "--purpose", "own-copy", "--for", "them", "--as", "dicom,jpeg"));
      words.addAll(List.of("--asked-by", "them", "--why", "they asked"));
    }
    return Asked.by(WHO, home, words.toArray(String[]::new));
  }

  private String passphrase(String text) throws IOException {
    Files.writeString(folder.resolve("words.txt"), text, StandardCharsets.UTF_8);
    return "words.txt";
  }

  private static Map<String, String> files(Path at) throws IOException {
    Map<String, String> files = new HashMap<>();
    try (Stream<Path> all = Files.walk(at)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(
            at.relativize(file).toString(), HexFormat.of().formatHex(Files.readAllBytes(file)));
      }
    }
    return files;
  }

  /** 7-Zip opens it, with the passphrase alone, and holds the method for AES-256. */
  @Test
  void anotherProgramOpensItWithThePassphraseAlone() throws Exception {
    ExternalTool sevenZip = ExternalTool.require("7zz", "7zip");
    Asked made = make("out.zip", "--passphrase-file", passphrase(PASSPHRASE + "\n"));
    assertThat(made.err()).isEmpty();
    assertThat(made.out())
        .isEqualTo("Release 2026-001: 1 photograph in out.zip, searched and clean, encrypted.\n");
    String zip = folder.resolve("out.zip").toString();
    Path opened = folder.resolve("opened");
    assertThat(sevenZip.run("x", "-p" + PASSPHRASE, "-o" + opened, zip).exitCode()).isZero();
    assertThat(make("plain", "--again", "2026-001").err()).isEmpty();
    assertThat(files(opened)).hasSize(5).isEqualTo(files(folder.resolve("plain")));
    String listed = sevenZip.run("l", "-slt", zip).text();
    assertThat(listed.lines().filter(line -> line.startsWith("Method = "))).hasSize(5);
    assertThat(listed.lines().filter(line -> line.startsWith("Method = ")))
        .allMatch(line -> line.contains("AES-256"));
    assertThat(listed.lines().filter(line -> line.startsWith("Modified = ")))
        .allMatch(line -> line.startsWith("Modified = 1980-01-01"));
    assertThat(sevenZip.run("x", "-pwrong", "-o" + folder.resolve("no"), zip).exitCode())
        .isNotZero();
    // Extra field 9901, 7 bytes: version 2 (AE-2), "AE", strength 3 (256 bits); from memory.
    assertThat(HexFormat.of().formatHex(Files.readAllBytes(folder.resolve("out.zip"))))
        .contains("0199" + "0700" + "0200" + "4145" + "03");
  }

  @Test
  void madeAgainItHasTheSameFilesAndOtherBytesAndThePassphraseIsNowhere() throws Exception {
    passphrase(PASSPHRASE);
    make("one.zip", "--passphrase-file", "words.txt");
    Asked again = make("two.zip", "--again", "2026-001", "--passphrase-file", "words.txt");
    assertThat(again.err()).isEmpty();
    assertThat(Files.readAllBytes(folder.resolve("one.zip")))
        .isNotEqualTo(Files.readAllBytes(folder.resolve("two.zip")));
    Files.delete(folder.resolve("words.txt"));
    String searched = HexFormat.of().formatHex(PASSPHRASE.getBytes(StandardCharsets.UTF_8));
    for (Map.Entry<String, String> file : files(folder).entrySet()) {
      assertThat(file.getValue().contains(searched)).as(file.getKey()).isFalse();
    }
  }

  @Test
  void whatProtectsNothingIsRefused() throws IOException {
    assertRefused(
        make("out.zip", "--passphrase-file", "none.txt"),
        """
        vestibule: there is no file none.txt with a passphrase.
          What to do: write the passphrase into a file that only you can read, and name it.
        """);
    assertRefused(
        make("out.zip", "--passphrase-file", passphrase("fifteen letters")),
        """
        vestibule: the passphrase has fewer than 16 characters, or a space at an end.
          What to do: take four or five words that nobody would guess.
        """);
    String plain =
        """
        vestibule: the passphrase is not one line of plain letters, digits and signs.
          What to do: use a to z, A to Z, 0 to 9, spaces and the signs between them: programs disagree about others.
        """;
    assertRefused(make("out.zip", "--passphrase-file", passphrase("Größer als vierzehn")), plain);
    assertRefused(
        make("out.zip", "--passphrase-file", passphrase(PASSPHRASE + "\nand more\n")), plain);
    assertRefused(
        make("out.zip", "--passphrase-file", passphrase("x".repeat(1025))),
        """
        vestibule: words.txt is too long for a passphrase.
          What to do: check that it is the right file.
        """);
    assertRefused(
        make("out", "--passphrase-file", passphrase(PASSPHRASE)),
        """
        vestibule: a passphrase is given, and out is to be a folder.
          What to do: name a file ending in .zip: a folder can't be encrypted.
        """);
  }

  private void assertRefused(Asked asked, String words) {
    assertThat(asked.err()).isEqualTo(words);
    assertThat(asked.code()).isEqualTo(3);
    assertThat(folder.resolve("out.zip")).doesNotExist();
    assertThat(folder.resolve("out")).doesNotExist();
  }
}
