package org.vestibule.search;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.vestibule.dental.Stage;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexField;

/** Understands phrases that mean the same in every practice: views, stages, mirror, accessories. */
final class PhraseReader {

  private static final String STAGE = "stage ";
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");

  private final ViewCatalogue views;
  private final Set<String> vocabulary;

  PhraseReader(ViewCatalogue views) {
    this.views = views;
    this.vocabulary = views.vocabulary();
  }

  /** The view that is called by "view" and its whole name, commas and all, as answers do. */
  Optional<Part> viewByName(List<String> tokens) {
    if (!lower(tokens.get(0)).equals("view")) {
      return Optional.empty();
    }
    List<String> name = tokens.stream().skip(1).map(PhraseReader::lower).toList();
    return views.all().stream()
        .filter(view -> Tokens.of(lower(view.name())).equals(name))
        .reduce((first, last) -> last)
        .map(PhraseReader::part);
  }

  private static Part part(View view) {
    return Part.of(IndexField.VIEW, "view " + view.name(), view.key());
  }

  /** What a phrase without commas means; a plural means the same. */
  Optional<Part> read(String phrase) {
    String plain = lower(phrase);
    Optional<Part> read = exactly(plain);
    boolean plural = plain.length() > 3 && plain.endsWith("s");
    return read.isPresent() || !plural ? read : exactly(plain.substring(0, plain.length() - 1));
  }

  private Optional<Part> exactly(String plain) {
    Optional<Part> fixed = FixedWords.find(plain);
    return fixed.or(() -> stage(plain)).or(() -> views(plain));
  }

  private static Optional<Part> stage(String plain) {
    String word = plain.startsWith(STAGE) ? plain.substring(STAGE.length()) : plain;
    return Stage.named(word)
        .or(() -> word.indexOf(' ') < 0 ? Optional.empty() : Stage.named(word.replace(' ', '-')))
        .map(Stage::words)
        .map(found -> Part.of(IndexField.STAGE, STAGE + found, found));
  }

  private Optional<Part> views(String plain) {
    boolean known =
        BETWEEN_WORDS
            .splitAsStream(plain.replace("3/4", "three-quarter"))
            .allMatch(word -> word.isEmpty() || vocabulary.contains(word));
    List<View> named = known ? views.allNaming(plain) : List.of();
    if (named.isEmpty()) {
      return Optional.empty();
    }
    if (named.size() == 1) {
      return Optional.of(part(named.get(0)));
    }
    AnyOf any = AnyOf.of(IndexField.VIEW, named.stream().map(View::key).toList());
    String echo = "any of " + named.size() + " views called \"" + plain + "\"";
    return Optional.of(new Part(IndexField.VIEW, any, echo));
  }

  private static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }
}
