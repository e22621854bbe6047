package org.vestibule.deid;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * The types of the attributes of the VL Photographic Image IOD (PS3.3 A.32.4, PS3.5 7.4), by their
 * place.
 */
final class AttributeTypes {

  static final AttributeTypes PHOTOGRAPHIC = new AttributeTypes();

  private static final String CODE = "CODE";

  /** What an attribute's type demands; a conditional one counts as if its condition held. */
  enum Demand {
    /** Type 1 or 1C. */
    VALUE,
    /** Type 2 or 2C. */
    PRESENCE,
    /** Type 3, or no attribute of the IOD here. */
    NOTHING
  }

  private final Map<String, String> typeByPath = new HashMap<>();
  private final Set<String> holdingCodes = new HashSet<>();
  private final Set<String> keywords = new HashSet<>();

  private AttributeTypes() {
    for (String[] line : Tables.read("photographic-types.csv", 3)) {
      typeByPath.put(line[0], line[1]);
      keywords.add(line[0].substring(line[0].lastIndexOf('>') + 1));
      if (line[2].equals(CODE)) {
        holdingCodes.add(line[0]);
      }
    }
  }

  /** True if the IOD has an attribute with this keyword anywhere. */
  boolean knows(String keyword) {
    return keywords.contains(keyword);
  }

  /**
   * What the IOD demands at this place.
   *
   * @param parent keywords of the sequences around it, divided by {@code >}; empty at the top
   */
  Demand demand(String parent, String keyword) {
    String path = parent.isEmpty() ? keyword : parent + ">" + keyword;
    String type = typeByPath.get(path);
    if (type == null && holdingCodes.contains(parent)) {
      type = typeByPath.get(CODE + ">" + keyword);
    }
    if (type == null || type.startsWith("3")) {
      return Demand.NOTHING;
    }
    return type.startsWith("1") ? Demand.VALUE : Demand.PRESENCE;
  }
}
