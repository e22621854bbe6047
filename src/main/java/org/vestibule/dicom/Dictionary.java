package org.vestibule.dicom;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The data elements of PS3.6, looked up in the resource table {@code data-elements.csv}.
 *
 * <p>The table is sorted by tag and searched as it lies in memory, line by line: nothing is parsed
 * but the few lines that a lookup touches. A keyword lookup builds its map once.
 */
public final class Dictionary {

  /**
   * What the dictionary says about an element.
   *
   * @param keyword the standard's keyword; empty for a few retired elements that have none
   * @param vrs value representations that it may have, the usual one first; empty for item tags
   * @param vm value multiplicity as the standard writes it, such as {@code 1-n}
   */
  public record Entry(String keyword, List<Vr> vrs, String vm, boolean retired, String name) {
    public Entry {
      vrs = List.copyOf(vrs);
    }
  }

  private static final String RESOURCE = "data-elements.csv";
  private static final int TAG_DIGITS = 8;

  /** Which digits of a tag may stand for a repeating group, as masks over the eight digits. */
  private static final List<String> REPEATING =
      List.of("50XX....", "60XX....", "002031XX", "002804X.", "002808X.", "1000XXX.", "1010XXXX");

  private static final class Table {
    static final byte[] BYTES = load();
    static final int START = lineAfter(lineAfter(0));
  }

  private static final class Keywords {
    static final Map<String, Integer> TAGS = keywords();
  }

  private Dictionary() {}

  /** The element with this tag, repeating groups included. */
  public static Optional<Entry> entry(int tag) {
    String digits = Tags.digits(tag);
    Optional<Entry> exact = find(digits);
    if (exact.isPresent()) {
      return exact;
    }
    return REPEATING.stream()
        .filter(mask -> fits(digits, mask))
        .findFirst()
        .flatMap(mask -> find(masked(digits, mask)));
  }

  /** The tag with this keyword; the first group of a repeating one. */
  public static OptionalInt tag(String keyword) {
    Integer tag = Keywords.TAGS.get(keyword);
    return tag == null ? OptionalInt.empty() : OptionalInt.of(tag);
  }

  /** The element's keyword, or its tag in parentheses where the standard has no keyword for it. */
  public static String keyword(int tag) {
    return entry(tag).map(Entry::keyword).filter(k -> !k.isEmpty()).orElseGet(() -> Tags.text(tag));
  }

  /**
   * The usual value representation: the dictionary's first; LO for a private creator, UL for a
   * group length, UN for what is not known.
   */
  public static Vr vr(int tag) {
    if (Tags.element(tag) == 0) {
      return Vr.UL;
    }
    if (Tags.isPrivate(tag)) {
      return Tags.element(tag) >= 0x10 && Tags.element(tag) <= 0xFF ? Vr.LO : Vr.UN;
    }
    return entry(tag).flatMap(e -> e.vrs().stream().findFirst()).orElse(Vr.UN);
  }

  /** How many elements the table holds. */
  public static int size() {
    int lines = 0;
    for (int at = Table.START; at < Table.BYTES.length; at = lineAfter(at)) {
      lines++;
    }
    return lines;
  }

  private static Optional<Entry> find(String digits) {
    int low = Table.START;
    int high = Table.BYTES.length;
    while (low < high) {
      int line = lineStart((low + high) >>> 1, low);
      int order = compare(digits, line);
      if (order == 0) {
        return Optional.of(parse(line(line)));
      }
      if (order < 0) {
        high = line;
      } else {
        low = lineAfter(line);
      }
    }
    return Optional.empty();
  }

  private static int compare(String digits, int line) {
    for (int i = 0; i < TAG_DIGITS; i++) {
      int difference = digits.charAt(i) - Table.BYTES[line + i];
      if (difference != 0) {
        return difference;
      }
    }
    return 0;
  }

  private static Entry parse(String line) {
    String[] columns = line.split(",", 6);
    List<Vr> vrs = new ArrayList<>();
    for (String letters : columns[2].split("/", -1)) {
      Vr.of(letters).ifPresent(vrs::add);
    }
    String name = columns[5];
    if (name.startsWith("\"")) {
      name = name.substring(1, name.length() - 1).replace("\"\"", "\"");
    }
    return new Entry(columns[1], vrs, columns[3], columns[4].equals("Y"), name);
  }

  private static boolean fits(String digits, String mask) {
    boolean evenGroup = (Character.digit(digits.charAt(3), 16) & 1) == 0;
    for (int i = 0; i < TAG_DIGITS; i++) {
      char m = mask.charAt(i);
      if (m != 'X' && m != '.' && m != digits.charAt(i)) {
        return false;
      }
    }
    return evenGroup;
  }

  private static String masked(String digits, String mask) {
    StringBuilder pattern = new StringBuilder(digits);
    for (int i = 0; i < TAG_DIGITS; i++) {
      if (mask.charAt(i) == 'X') {
        pattern.setCharAt(i, 'X');
      }
    }
    return pattern.toString();
  }

  private static Map<String, Integer> keywords() {
    Map<String, Integer> keywords = new HashMap<>();
    for (int at = Table.START; at < Table.BYTES.length; at = lineAfter(at)) {
      String line = line(at);
      String keyword = line.substring(TAG_DIGITS + 1, line.indexOf(',', TAG_DIGITS + 1));
      String digits = line.substring(0, TAG_DIGITS).replace('X', '0');
      if (!keyword.isEmpty()) {
        keywords.put(keyword, Integer.parseUnsignedInt(digits, 16));
      }
    }
    return keywords;
  }

  private static int lineStart(int at, int notBefore) {
    int start = at;
    while (start > notBefore && Table.BYTES[start - 1] != '\n') {
      start--;
    }
    return start;
  }

  private static int lineAfter(int at) {
    int next = at;
    while (next < Table.BYTES.length && Table.BYTES[next] != '\n') {
      next++;
    }
    return Math.min(next + 1, Table.BYTES.length);
  }

  private static String line(int start) {
    int end = lineAfter(start);
    int length = end > start && Table.BYTES[end - 1] == '\n' ? end - 1 - start : end - start;
    return new String(Table.BYTES, start, length, StandardCharsets.UTF_8);
  }

  private static byte[] load() {
    try (InputStream in = Dictionary.class.getResourceAsStream(RESOURCE)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its table " + RESOURCE);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("the program's table " + RESOURCE + " can't be read", e);
    }
  }
}
