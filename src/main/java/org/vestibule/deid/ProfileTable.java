package org.vestibule.deid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.dicom.Tags;

/** Table E.1-1 of PS3.15 together with what goes besides, looked up by tag. */
final class ProfileTable {

  private static final int COLUMNS = 14;
  private static final int BASIC = 3;

  /** Which option stands in which column of the two tables. */
  private static final Map<ProfileOption, Integer> OPTION_COLUMNS =
      Map.of(
          ProfileOption.RETAIN_UIDS, 4,
          ProfileOption.RETAIN_DEVICE_IDENTITY, 5,
          ProfileOption.RETAIN_INSTITUTION_IDENTITY, 6,
          ProfileOption.RETAIN_PATIENT_CHARACTERISTICS, 7,
          ProfileOption.RETAIN_FULL_DATES, 8,
          ProfileOption.RETAIN_MODIFIED_DATES, 9,
          ProfileOption.CLEAN_DESCRIPTORS, 10,
          ProfileOption.CLEAN_STRUCTURED_CONTENT, 11);

  static final ProfileTable STANDARD = new ProfileTable();

  private final Map<String, ProfileRow> byTag = new HashMap<>();
  private final List<ProfileRow> repeating = new ArrayList<>();

  private ProfileTable() {
    for (String table : List.of("profile.csv", "beyond-the-table.csv")) {
      for (String[] line : Tables.read(table, COLUMNS)) {
        ProfileRow row = row(line);
        if (row.tag().indexOf('X') >= 0) {
          repeating.add(row);
        } else {
          byTag.put(row.tag(), row);
        }
      }
    }
  }

  Optional<ProfileRow> row(int tag) {
    String digits = Tags.digits(tag);
    ProfileRow exact = byTag.get(digits);
    if (exact != null) {
      return Optional.of(exact);
    }
    return repeating.stream().filter(row -> fits(digits, row.tag())).findFirst();
  }

  private static boolean fits(String digits, String mask) {
    for (int i = 0; i < mask.length(); i++) {
      if (mask.charAt(i) != 'X' && mask.charAt(i) != digits.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static ProfileRow row(String[] line) {
    Map<ProfileOption, Action> withOption = new EnumMap<>(ProfileOption.class);
    OPTION_COLUMNS.forEach(
        (option, column) -> {
          if (!line[column].isEmpty()) {
            withOption.put(option, Action.valueOf(line[column]));
          }
        });
    List<Action> basic = Arrays.stream(line[BASIC].split("/", -1)).map(Action::valueOf).toList();
    return new ProfileRow(line[0], line[2], basic, withOption);
  }
}
