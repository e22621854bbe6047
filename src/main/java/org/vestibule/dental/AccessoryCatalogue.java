package org.vestibule.dental;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/** The accessories of dental photography, as the resource lists them. */
public final class AccessoryCatalogue {

  private static final List<Accessory> ALL =
      CsvTable.ofResource("accessories.csv").rows().stream()
          .map(AccessoryCatalogue::accessory)
          .toList();

  private AccessoryCatalogue() {}

  public static List<Accessory> all() {
    return ALL;
  }

  public static Optional<Accessory> byKey(String key) {
    return ALL.stream().filter(accessory -> accessory.key().equals(key)).findFirst();
  }

  /** The accessory that the words name. A kind must be said where there are several. */
  public static Outcome<Accessory> find(String words) {
    String asked = plain(words);
    List<Accessory> named =
        ALL.stream().filter(accessory -> accessory.words().contains(asked)).toList();
    if (named.size() == 1) {
      return Outcome.done(named.get(0));
    }
    List<Accessory> kinds =
        ALL.stream()
            .filter(accessory -> accessory.words().stream().anyMatch(word -> hasWords(word, asked)))
            .toList();
    if (!asked.isEmpty() && !kinds.isEmpty()) {
      return Outcome.refused(
          "\"" + asked + "\" does not say which kind",
          "say which: " + kinds.stream().map(Accessory::name).collect(Collectors.joining("; ")));
    }
    List<String> known = ALL.stream().flatMap(accessory -> accessory.words().stream()).toList();
    return Outcome.refused(
        "\"" + asked + "\" is not a known accessory",
        new NearestWords(known)
            .suggestion(
                asked,
                "known are: "
                    + ALL.stream().map(Accessory::name).collect(Collectors.joining("; "))));
  }

  private static boolean hasWords(String phrase, String asked) {
    return List.of(phrase.split(" ", -1)).containsAll(List.of(asked.split(" ", -1)));
  }

  private static String plain(String words) {
    return words.trim().toLowerCase(Locale.ROOT).replaceAll("[\\s_(),-]+", " ").trim();
  }

  private static Accessory accessory(CsvTable.Row row) {
    return new Accessory(
        row.get("key"),
        row.get("name"),
        Stream.concat(Stream.of(row.get("name"), row.get("key")), row.list("words").stream())
            .map(AccessoryCatalogue::plain)
            .distinct()
            .toList(),
        code(row.get("code")),
        row.get("description"));
  }

  private static @Nullable Code code(String value) {
    return value.isEmpty()
        ? null
        : ContextGroup.of(4072)
            .flatMap(group -> group.sct(value))
            .orElseThrow(() -> new IllegalStateException("CID 4072 lacks " + value));
  }
}
