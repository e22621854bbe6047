package org.vestibule.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Vr;

/** The attributes of the VL Photographic Image IOD (PS3.3 A.32.4), from the resource table. */
final class AttributeTable {

  static final AttributeTable STANDARD = new AttributeTable(Tables.read("vl-photographic.csv"));

  private static final String CODE = "CODE";

  private final Map<String, AttributeRow> byPath = new HashMap<>();
  private final Map<String, List<AttributeRow>> byParent = new HashMap<>();

  private AttributeTable(List<String[]> lines) {
    for (String[] line : lines) {
      AttributeRow row = row(line);
      byPath.put(row.path(), row);
      int last = row.path().lastIndexOf('>');
      String parent = last < 0 ? "" : row.path().substring(0, last);
      byParent.computeIfAbsent(parent, p -> new ArrayList<>()).add(row);
    }
  }

  /** The attribute with this tag at the top of the data set. */
  Optional<AttributeRow> top(int tag) {
    return Optional.ofNullable(byPath.get(Dictionary.keyword(tag)));
  }

  /** The attributes at the top of the data set. */
  List<AttributeRow> top() {
    return List.copyOf(byParent.getOrDefault("", List.of()));
  }

  /** The attributes that an item of this sequence can hold. */
  List<AttributeRow> inside(AttributeRow sequence) {
    List<AttributeRow> rows = new ArrayList<>();
    if (sequence.holdsCodes()) {
      rows.addAll(byParent.getOrDefault(CODE, List.of()));
    }
    rows.addAll(byParent.getOrDefault(sequence.path(), List.of()));
    return rows;
  }

  private static AttributeRow row(String[] c) {
    List<Vr> vrs = new ArrayList<>();
    for (String vr : c[2].split("/", -1)) {
      Vr.of(vr).ifPresent(vrs::add);
    }
    return new AttributeRow(
        c[0],
        vrs,
        c[3],
        c[4],
        c[5].isEmpty() ? null : Condition.parse(c[5]),
        c[6].equals("may"),
        ValueList.parse(c[7]),
        c[8].isEmpty() ? null : CodeBinding.parse(c[8]),
        c[9].isEmpty() ? 0 : Integer.parseInt(c[9]),
        c[10],
        c[11],
        c[12]);
  }
}
