package org.vestibule.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Searches finished files for what must not be in them: in their bytes, in UTF-8, UTF-16 and
 * Latin-1, in unpacked streams, in every field and in their names. Coded picture data is left out.
 */
public final class LeakSearch {

  private final List<Needle> needles = new ArrayList<>();

  public LeakSearch(Secrets secrets) {
    secrets.texts().stream()
        .map(String::strip)
        .filter(text -> !text.isEmpty())
        .sorted()
        .forEach(text -> needles.add(new Needle(text, "a name, a number or a UID")));
    secrets.days().stream()
        .sorted()
        .map(DaySpellings::of)
        .flatMap(Set::stream)
        .forEach(day -> needles.add(new Needle(day, "a day")));
    secrets.bytes().stream()
        .sorted()
        .forEach(hex -> needles.add(Needle.ofBytes(HexFormat.of().parseHex(hex), "a position")));
  }

  /**
   * What kind of place holds a value that must not be there, in words that don't repeat the value;
   * empty if the file is clean.
   *
   * @param name of the file, which is searched too; its end says of what kind it is
   */
  public Optional<String> find(String name, byte[] bytes) throws IOException {
    SearchedFile file = FileContents.of(name, bytes);
    List<byte[]> folded = file.bytes.stream().map(Needle::folded).toList();
    for (Needle needle : needles) {
      if (isIn(needle, file, folded)) {
        return Optional.of(name + " holds " + needle.kind());
      }
    }
    return Optional.empty();
  }

  private static boolean isIn(Needle needle, SearchedFile file, List<byte[]> folded) {
    if (file.fields.stream().anyMatch(needle::is)) {
      return true;
    }
    return !needle.isShort()
        && (folded.stream().anyMatch(needle::isIn) || file.fields.stream().anyMatch(needle::isIn));
  }
}
