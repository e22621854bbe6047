package org.vestibule.check;

import java.util.HashSet;
import java.util.Set;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Which codes belong to a context group (PS3.16), from the resource table. */
final class ContextGroups {

  static final ContextGroups STANDARD = new ContextGroups();

  private static final String SNOMED = "SCT";
  private static final String LOCAL = "99";
  private static final String OLD_SNOMED = "SRT";

  private final Set<String> members = new HashSet<>();

  private ContextGroups() {
    for (String[] line : Tables.read("context-groups.csv")) {
      members.add(key(line[0], line[1], line[2]));
      if (!line[3].isEmpty()) {
        members.add(key(line[0], OLD_SNOMED, line[3]));
      }
    }
  }

  /**
   * True if the item's code is a member, or one that extends the group, or, where groups are only
   * suggested, one of a local scheme.
   */
  boolean allows(CodeBinding binding, DataSet item) {
    if (item.string(Tags.ContextGroupExtensionFlag).filter("Y"::equals).isPresent()) {
      return true;
    }
    String scheme = item.string(Tags.CodingSchemeDesignator).orElse(SNOMED);
    if (!binding.defined() && scheme.startsWith(LOCAL)) {
      return true;
    }
    String code = item.string(Tags.CodeValue).orElse("");
    return binding.groups().stream().anyMatch(g -> members.contains(key(g, scheme, code)));
  }

  private static String key(String group, String scheme, String code) {
    return group + " " + scheme + " " + code;
  }
}
