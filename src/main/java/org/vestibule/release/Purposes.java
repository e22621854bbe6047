package org.vestibule.release;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;
import org.vestibule.base.ResourceTable;
import org.vestibule.deid.ProfileOption;
import org.vestibule.dicom.Dictionary;

/** The purposes for which copies may leave the practice, from the resource table. */
public final class Purposes {

  private static final int COLUMNS = 13;

  private static final Map<String, Purpose> ALL = load();

  private Purposes() {}

  public static List<Purpose> all() {
    return List.copyOf(ALL.values());
  }

  /** The purpose with this key. */
  public static Outcome<Purpose> find(String key) {
    Purpose purpose = ALL.get(key.strip().toLowerCase(Locale.ROOT));
    return purpose == null
        ? Outcome.refused(
            "there is no purpose \"" + key.strip() + "\"",
            "say one of: " + String.join(", ", ALL.keySet()))
        : Outcome.done(purpose);
  }

  private static Map<String, Purpose> load() {
    Map<String, Purpose> all = new LinkedHashMap<>();
    ResourceTable.lines(Purposes.class, "purposes.csv").stream()
        .map(line -> purpose(line.split(",", COLUMNS)))
        .forEach(purpose -> all.put(purpose.key(), purpose));
    return all;
  }

  private static Purpose purpose(String[] c) {
    return new Purpose(
        c[0],
        c[1],
        c[2].equals("named"),
        words(c[3]).stream().map(Purposes::tag).collect(Collectors.toSet()),
        options(c[4]),
        Purpose.Dates.valueOf(c[5].toUpperCase(Locale.ROOT)),
        c[6].equals("yes"),
        Purpose.Faces.valueOf(c[7].toUpperCase(Locale.ROOT).replace(' ', '_')),
        c[8].equals("needed"),
        c[9].equals("needed"),
        c[10].equals("yes"),
        c[11].equals("recipient"),
        c[12]);
  }

  private static Set<ProfileOption> options(String words) {
    Set<ProfileOption> options = EnumSet.noneOf(ProfileOption.class);
    words(words).forEach(word -> options.add(ProfileOption.valueOf(word)));
    return options;
  }

  private static List<String> words(String cell) {
    return Arrays.stream(cell.split("\\|", -1)).filter(word -> !word.isEmpty()).toList();
  }

  private static int tag(String keyword) {
    return Dictionary.tag(keyword)
        .orElseThrow(() -> new IllegalStateException("purposes.csv names no element " + keyword));
  }
}
