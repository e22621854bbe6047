package org.vestibule.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.dental.Area;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;

/** The files of words for what is printed: cards, sheets, and the trade's words on both. */
class PrintedWordsTest {

  private static final Path RESOURCES = Path.of("src/main/resources/org/vestibule");

  private static Map<String, String> keys(String file, Language language) throws IOException {
    Map<String, String> keys = new TreeMap<>();
    Path path = RESOURCES.resolve(file + "_" + language.tag() + ".properties");
    for (String line : Files.readAllLines(path, StandardCharsets.UTF_8)) {
      if (!line.startsWith("#") && line.contains(" = ")) {
        String[] parts = line.split(" = ", 2);
        keys.put(parts[0], parts[1]);
      }
    }
    return keys;
  }

  @ParameterizedTest
  @ValueSource(strings = {"card/words/cards", "release/words/sheet", "words/trade"})
  void bothLanguagesHaveTheSameKeysAndPlaceHolders(String file) throws IOException {
    Map<String, String> english = keys(file, Language.ENGLISH);
    Map<String, String> german = keys(file, Language.GERMAN);
    assertThat(english).isNotEmpty();
    assertThat(german.keySet()).isEqualTo(english.keySet());
    Pattern holder = Pattern.compile("\\{\\d}");
    for (String key : english.keySet()) {
      assertThat(
              new TreeSet<>(holder.matcher(german.get(key)).results().map(m -> m.group()).toList()))
          .as(key)
          .isEqualTo(
              new TreeSet<>(
                  holder.matcher(english.get(key)).results().map(m -> m.group()).toList()));
    }
  }

  @Test
  void teethAreSaidAsTheCommandLineSaysThemAndInGerman() {
    TradeWords english = new TradeWords(Words.trade(Language.ENGLISH), ViewCatalogue.standard());
    TradeWords german = new TradeWords(Words.trade(Language.GERMAN), ViewCatalogue.standard());
    for (String said : List.of("13-23, 36", "16", "36 implant", "55", "18, 16, 14")) {
      Teeth teeth = new TeethReader(Notation.ISO_3950).read(said).orThrow();
      assertThat(english.teeth(teeth)).isEqualTo(teeth.words());
    }
    for (Area area : Area.values()) {
      Teeth teeth = new Teeth(List.of(), List.of(area));
      assertThat(english.teeth(teeth)).isEqualTo(teeth.words());
      assertThat(german.teeth(teeth)).doesNotContain("quadrant", "arch", "upper", "lower");
    }
    assertThat(german.teeth(new TeethReader(Notation.ISO_3950).read("13-23, 36").orThrow()))
        .isEqualTo(
            "Eckzahn oben rechts bis Eckzahn oben links (13-23, 6 Zähne), erster Molar unten links"
                + " (36)");
  }
}
