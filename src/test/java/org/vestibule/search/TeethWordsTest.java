package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Area;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;

/** The quick look at a word never passes over one that the reader of teeth understands. */
class TeethWordsTest {

  private static Stream<String> words() {
    Stream<String> areas = Stream.of(Area.values()).flatMap(area -> area.says().stream());
    Stream<String> occupants = Stream.of(Occupant.values()).flatMap(one -> one.says().stream());
    Stream<String> numbers = IntStream.range(0, 1000).mapToObj(Integer::toString);
    Stream<String> marked =
        Stream.of("#", "ur", "ul", "ll", "lr", "u", "U", "\u250C", "\u2518")
            .flatMap(mark -> Stream.of(mark + "6", mark + "E", "6" + mark, mark + ".6", mark));
    Stream<String> letters =
        IntStream.rangeClosed('a', 'z')
            .mapToObj(Character::toString)
            .flatMap(one -> Stream.of(one, "ur" + one, "l" + one, one + "pper", "ur." + one));
    Stream<String> views = ViewCatalogue.standard().vocabulary().stream();
    return Stream.of(areas, occupants, numbers, marked, letters, views)
        .flatMap(some -> some)
        .flatMap(said -> Stream.of(said.split(" ", -1)))
        .flatMap(word -> Stream.of(word, word.toUpperCase(Locale.ROOT), "\"" + word));
  }

  @ParameterizedTest
  @EnumSource(Notation.class)
  void aWordThatNamesTeethMayNameThem(Notation notation) {
    TeethReader reader = new TeethReader(notation);
    List<String> passedOver =
        words()
            .filter(word -> reader.read(Tokens.bare(word)) instanceof Outcome.Done)
            .filter(word -> !TeethWords.mayName(List.of(word)))
            .toList();
    assertThat(passedOver).isEmpty();
    assertThat(words().filter(word -> reader.read(word) instanceof Outcome.Done)).isNotEmpty();
    assertThat(TeethWords.mayName(List.of("occlusal"))).isFalse();
  }
}
