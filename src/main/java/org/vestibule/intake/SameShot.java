package org.vestibule.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds photographs that show one shot: an edited copy beside its original carries an E before its
 * number (common practice, no source), and both carry the same time to the fraction and the same
 * camera.
 */
final class SameShot {

  private static final Pattern EDITED =
      Pattern.compile("^(.*?[a-z]+_)e(\\d{3,})((?:[^0-9].*)?)$", Pattern.DOTALL);

  private SameShot() {}

  static List<List<Photo>> groups(List<Photo> photos) {
    Map<String, List<Photo>> byKey = new LinkedHashMap<>();
    List<List<Photo>> groups = new ArrayList<>();
    for (Photo photo : photos) {
      List<Photo> group = null;
      for (String key : keys(photo)) {
        List<Photo> known = byKey.get(key);
        if (known != null && group != null && known != group) {
          known.forEach(group::add);
          groups.remove(known);
          List<Photo> merged = group;
          byKey.replaceAll((k, v) -> v == known ? merged : v);
        } else if (known != null) {
          group = known;
        }
      }
      if (group == null) {
        group = new ArrayList<>();
        groups.add(group);
      }
      group.add(photo);
      for (String key : keys(photo)) {
        byKey.put(key, group);
      }
    }
    return groups.stream().filter(group -> group.size() > 1).map(List::copyOf).toList();
  }

  private static List<String> keys(Photo photo) {
    List<String> keys = new ArrayList<>();
    keys.add("name " + originalStem(photo.arrival().name()));
    photo.facts().shot().ifPresent(keys::add);
    return keys;
  }

  /**
   * The stem that the original of an edited copy has: {@code img_e1234} becomes {@code img_1234}.
   */
  static String originalStem(String name) {
    String stem = FileNames.key(FileNames.stem(name));
    Matcher edited = EDITED.matcher(stem);
    return edited.matches() ? edited.group(1) + edited.group(2) + edited.group(3) : stem;
  }

  /** True if the name is one that phones give an edited copy. */
  static boolean isEditedName(String name) {
    return EDITED.matcher(FileNames.key(FileNames.stem(name))).matches();
  }
}
