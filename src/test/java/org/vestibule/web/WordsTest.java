package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.dental.Direction;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** Every word is there in every language, and templates ask for words that there are. */
class WordsTest {

  private static final Path RESOURCES = Path.of("src/main/resources/org/vestibule/web");
  private static final Pattern VALUE = Pattern.compile("\\{\\d}");

  @Test
  void everyLanguageHasTheSameKeysAndValues() {
    Words english = PageWords.of(Language.ENGLISH);
    for (Language language : Language.values()) {
      Words words = PageWords.of(language);
      assertThat(words.all().keySet()).as(language.tag()).isEqualTo(english.all().keySet());
      for (String key : english.all().keySet()) {
        assertThat(values(words.say(key)))
            .as(language + " " + key)
            .isEqualTo(values(english.say(key)));
      }
    }
  }

  private static Set<String> values(String text) {
    Set<String> values = new TreeSet<>();
    VALUE.matcher(text).results().forEach(found -> values.add(found.group()));
    return values;
  }

  @Test
  void everyFileOfWordsBelongsToAnArea() throws IOException {
    List<String> expected = new ArrayList<>();
    for (String area : PageWords.AREAS) {
      for (Language language : Language.values()) {
        expected.add(area + "_" + language.tag() + ".properties");
      }
    }
    try (Stream<Path> files = Files.list(RESOURCES.resolve("words"))) {
      assertThat(files.map(file -> String.valueOf(file.getFileName())))
          .containsExactlyInAnyOrderElementsOf(expected);
    }
  }

  @Test
  void everyViewToothStageAndSideHasAWord() {
    for (Language language : Language.values()) {
      TradeWords trade = new TradeWords(PageWords.of(language), ViewCatalogue.standard());
      for (View view : ViewCatalogue.standard().all()) {
        assertThat(PageWords.of(language).find("view-" + view.key())).as(view.key()).isPresent();
      }
      Tooth.all().forEach(tooth -> assertThat(trade.tooth(tooth)).isNotBlank());
      for (Stage stage : Stage.values()) {
        assertThat(trade.stage(stage.words())).isNotBlank();
      }
      for (Direction direction : Direction.values()) {
        assertThat(trade.direction(direction)).isNotBlank();
      }
    }
  }

  /** The words of the pages are those of the command line and of the objects. */
  @Test
  void inEnglishTheyAreTheCataloguesOwn() {
    TradeWords trade = new TradeWords(PageWords.of(Language.ENGLISH), ViewCatalogue.standard());
    for (View view : ViewCatalogue.standard().all()) {
      assertThat(trade.view(view)).isEqualTo(view.name());
    }
    for (Tooth tooth : Tooth.all()) {
      assertThat(trade.tooth(tooth)).isEqualTo(tooth.words());
    }
    for (Direction direction : Direction.values()) {
      assertThat(trade.direction(direction)).isEqualTo(direction.words());
    }
  }

  @Test
  void templatesEscapeEverythingAndAskForWordsThatThereAre() throws IOException {
    Words words = PageWords.of(Language.ENGLISH);
    Pattern asked = Pattern.compile("\\{\\{w\\.([a-z0-9-]+)}}");
    try (Stream<Path> files = Files.list(RESOURCES.resolve("pages"))) {
      for (Path file : files.toList()) {
        String name = String.valueOf(file.getFileName());
        String text = Templates.text(name.replace(".mustache", ""));
        assertThat(text).as(name).doesNotContain(" style=").doesNotContainPattern(" on[a-z]+=");
        Matcher matcher = asked.matcher(text);
        while (matcher.find()) {
          assertThat(words.find(matcher.group(1))).as(name + ": " + matcher.group(1)).isPresent();
        }
        long forms = Pattern.compile("method=\"post\"").matcher(text).results().count();
        long proofs = Pattern.compile("\\{\\{>form}}").matcher(text).results().count();
        assertThat(proofs).as(name).isEqualTo(forms);
      }
    }
  }

  /** RFC 9110, 12.5.4, and RFC 4647, 3.4. */
  @ParameterizedTest
  @CsvSource({
    "'',''     ,ENGLISH",
    "'',de     ,GERMAN",
    "'','de-AT,en;q=0.5',GERMAN",
    "'','fr,de;q=0.4,en;q=0.8',ENGLISH",
    "'',fr,ENGLISH",
    "'',';;q',ENGLISH",
    "en,de,ENGLISH",
    "de,en,GERMAN",
    "xx,de,GERMAN"
  })
  void theLanguageIsTheChosenOneElseWhatTheBrowserAsks(
      String chosen, String header, Language expected) {
    assertThat(Language.of(chosen, header, Language.ENGLISH)).isEqualTo(expected);
  }

  /** A browser that asks for nothing of ours gets what the practice speaks. */
  @Test
  void thePracticesLanguageHoldsWhereTheBrowserAsksForNone() {
    assertThat(Language.of("", "fr", Language.GERMAN)).isEqualTo(Language.GERMAN);
    assertThat(Language.of("", "", Language.GERMAN)).isEqualTo(Language.GERMAN);
    assertThat(Language.of("", "en", Language.GERMAN)).isEqualTo(Language.ENGLISH);
  }

  @Test
  void resourcesAreUtf8() throws IOException {
    try (Stream<Path> files = Files.walk(RESOURCES)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(Files.readString(file, StandardCharsets.UTF_8)).isNotEmpty();
      }
    }
  }
}
