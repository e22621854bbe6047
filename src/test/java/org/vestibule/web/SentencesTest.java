package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;

/** What the rooms behind the pages say is said in the other language too, and stays so. */
class SentencesTest {

  private static final Path SOURCES = Path.of("src/main/java/org/vestibule");
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
  private static final Pattern PLACE = Pattern.compile("\\{[a-z]*\\d?}");

  /** How many characters of a piece are enough to know it again. */
  private static final int TELLING = 8;

  private static final Sentences GERMAN =
      new Sentences(
          Language.GERMAN, new TradeWords(PageWords.of(Language.GERMAN), ViewCatalogue.standard()));

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "nobody said where the incisors lie in this Upper occlusal"
            + "|niemand sagte, wo in dieser Ansicht die Schneidezähne liegen: Okklusal Oberkiefer",
        "nobody said whose it is, and its time lies in no visit"
            + "|niemand sagte, wessen es ist, und die Zeit liegt in keinem Besuch",
        "The frame has 1.2 million pixels, fewer than 5.0 million."
            + "|Das Bild hat 1,2 Millionen Bildpunkte, weniger als 5,0 Millionen.",
        "nobody said where the incisors lie in this Upper occlusal; the phone points up or down here,"
            + " where Exif rotation can't be trusted"
            + "|niemand sagte, wo in dieser Ansicht die Schneidezähne liegen: Okklusal Oberkiefer. Die"
            + " Kamera schaut hier nach oben oder unten, da ist auf ihre Angabe kein Verlass",
        "nobody said where the incisors lie in this Upper occlusal; nobody said which view it shows"
            + "|niemand sagte, wo in dieser Ansicht die Schneidezähne liegen: Okklusal Oberkiefer;"
            + " niemand sagte, welche Ansicht es ist",
        "the file breaks off at byte 40: the picture's data ends too early; the first 264 of its 960"
            + " rows (27 %) are sound"
            + "|die Datei bricht nach 40 Byte ab; nicht jede Zeile des Bildes ist da oder heil; die"
            + " ersten 264 seiner 960 Zeilen (27 %) sind heil",
        "teeth: no tooth is named|Zähne: es ist kein Zahn genannt",
        "its row names another mirror than its folder or file name"
            + "|die Liste sagt etwas anderes als Ordner oder Dateiname: Spiegel",
        "upper right first molar (16), gap at lower left first molar (36); stage before"
            + "|erster Molar oben rechts (16), Lücke: erster Molar unten links (36); Stadium"
            + " vorher",
        "since 2026-03-01; teeth of the upper arch|seit 2026-03-01; Zähne: Oberkiefer",
        "did you mean \"molar\"?|meinten Sie „molar“?",
      })
  void theSentenceIsSaidWithWhatStandsInIt(String english, String german) {
    assertThat(GERMAN.say(english)).isEqualTo(new Sentences.Said(german, "de"));
  }

  @Test
  void whatIsNotKnownStaysEnglishAndSaysSo() {
    assertThat(GERMAN.say("the moon is full"))
        .isEqualTo(new Sentences.Said("the moon is full", "en"));
    String half = "nobody said whose it is, and the moon is full";
    assertThat(GERMAN.say(half)).isEqualTo(new Sentences.Said(half, "en"));
  }

  @Test
  void aTranslationHasNoPlaceThatTheSentenceLacks() {
    for (SentenceRow row : Sentences.rows(Language.GERMAN)) {
      assertThat(places(row.english())).as(row.english()).containsAll(places(row.other()));
    }
  }

  private static Set<String> places(String text) {
    return PLACE
        .matcher(text)
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** A sentence that is changed in the program would lose its translation unseen. */
  @Test
  void theProgramStillSaysEverySentence() throws IOException {
    String said = said(SOURCES);
    List<String> gone = new ArrayList<>();
    for (SentenceRow row : Sentences.rows(Language.GERMAN)) {
      Arrays.stream(PLACE.split(row.english()))
          .map(String::strip)
          .filter(piece -> piece.length() >= TELLING && !isSaid(piece, said))
          .forEach(piece -> gone.add(row.english() + " <- " + piece));
    }
    assertThat(gone).isEmpty();
  }

  /** True for a text of the program, or for several one after the other. */
  private static boolean isSaid(String piece, String said) {
    int at = 0;
    while (piece.length() - at >= TELLING) {
      int end = piece.length();
      while (end - at >= TELLING && !said.contains(piece.substring(at, end))) {
        end--;
      }
      if (end - at < TELLING) {
        return false;
      }
      at = end;
    }
    return true;
  }

  /** Every reason for which a photograph may wait is there. */
  @Test
  void everyReasonToWaitIsSaid() throws IOException {
    String known =
        Sentences.rows(Language.GERMAN).stream()
            .map(SentenceRow::english)
            .collect(Collectors.joining("\n"));
    List<String> missing = new ArrayList<>();
    try (Stream<Path> files = Files.list(SOURCES.resolve("assign"))) {
      for (Path file : files.sorted().toList()) {
        for (String call : calls(Files.readString(file))) {
          LITERAL
              .matcher(joined(call))
              .results()
              .map(found -> plain(found.group(1)).strip())
              .filter(text -> text.length() >= TELLING && text.contains(" "))
              .filter(text -> !known.contains(text))
              .forEach(text -> missing.add(file.getFileName() + ": " + text));
        }
      }
    }
    assertThat(missing).isEmpty();
  }

  /** What is said where a reason to wait is made. */
  private static List<String> calls(String source) {
    List<String> calls = new ArrayList<>();
    Pattern.compile(
            "(?:new WaitReason|finding\\.waits|SortedView\\.waits|\\bcontradiction|\\border"
                + "|\\bdoubted|\\bwaits)\\(")
        .matcher(source)
        .results()
        .forEach(found -> calls.add(source.substring(found.end(), end(source, found.end()))));
    return calls;
  }

  /** Where the bracket that was opened before this place is closed. */
  private static int end(String source, int from) {
    int depth = 1;
    int at = from;
    while (depth > 0) {
      char here = source.charAt(at);
      if (here == '"') {
        at++;
        while (source.charAt(at) != '"') {
          at += source.charAt(at) == '\\' ? 2 : 1;
        }
      }
      depth += here == '(' ? 1 : here == ')' ? -1 : 0;
      at++;
    }
    return at;
  }

  private static String said(Path folder) throws IOException {
    StringBuilder all = new StringBuilder();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).sorted().toList()) {
        all.append(plain(joined(Files.readString(file)))).append('\n');
      }
    }
    try (Stream<Path> tables = Files.walk(Path.of("src/main/resources/org/vestibule/dental"))) {
      for (Path table : tables.filter(Files::isRegularFile).sorted().toList()) {
        all.append(Files.readString(table));
      }
    }
    return all.toString();
  }

  /** Texts that are broken over several lines, as one. */
  private static String joined(String source) {
    return source.replaceAll("\"\\s*\\+\\s*\"", "");
  }

  private static String plain(String text) {
    return text.replace("\\\"", "\"").replace("%%", "%");
  }
}
