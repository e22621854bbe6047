package org.vestibule.dental;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * Finds the known words nearest to one that is not known, by edit distance: an inserted, dropped or
 * changed letter, or two neighbours exchanged, counts one.
 */
public final class NearestWords {

  private record Near(String word, int distance) {}

  private final List<String> known;

  /** Known words or phrases; compared in lower case. */
  public NearestWords(Collection<String> known) {
    this.known = List.copyOf(new TreeSet<>(known));
  }

  /**
   * At most so many known words within about a third of the word's length, nearest first; words
   * that begin with the given one count as near.
   */
  public List<String> to(String word, int most) {
    String asked = word.toLowerCase(Locale.ROOT);
    int limit = Math.max(1, asked.length() / 3);
    return known.stream()
        .map(candidate -> new Near(candidate, distance(asked, candidate, limit)))
        .filter(near -> near.distance <= limit)
        .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::word))
        .limit(most)
        .map(Near::word)
        .toList();
  }

  /** {@code did you mean "a" or "b"?}, or the given words if nothing is near. */
  public String suggestion(String word, String otherwise) {
    List<String> near = to(word, 3);
    return near.isEmpty() ? otherwise : "did you mean \"" + String.join("\" or \"", near) + "\"?";
  }

  private static int distance(String asked, String candidate, int limit) {
    String other = candidate.toLowerCase(Locale.ROOT);
    if (asked.length() >= 3 && other.startsWith(asked)) {
      return 1;
    }
    return Math.abs(asked.length() - other.length()) > limit ? limit + 1 : distance(asked, other);
  }

  /** Edit distance with exchanged neighbours (optimal string alignment). */
  static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      d[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      d[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
        if (i > 1 && j > 1 && exchanged(a, i, b, j)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }

  private static boolean exchanged(String a, int i, String b, int j) {
    return a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
  }
}
