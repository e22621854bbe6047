package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.dental.Area;
import org.vestibule.dental.Code;
import org.vestibule.dental.Side;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * The arch of an arch view, then the areas and the teeth that a person named; never the usual teeth
 * (Primary Anatomic Structure, VL Image, PS3.3 C.8.12.1). A quadrant is an arch with its side as
 * modifier, a sextant one with front, or with side and back (CID 2).
 */
final class StructurePart {

  private StructurePart() {}

  static void write(DataSet to, View view, Teeth teeth) {
    List<DataSet> structures = new ArrayList<>();
    Code structure = view.structure();
    if (structure != null) {
      Side side = view.arch() == null ? null : view.onlySide();
      structures.add(structure(structure, side == null ? List.of() : List.of(side.code())));
    }
    for (Area area : teeth.areas()) {
      DataSet item = structure(area.structure(), area.structureModifiers());
      if (!structures.contains(item)) {
        structures.add(item);
      }
    }
    teeth.teeth().forEach(tooth -> structures.add(CodeItems.item(tooth.code())));
    if (!structures.isEmpty()) {
      to.put(Tags.PrimaryAnatomicStructureSequence, structures);
    }
  }

  private static DataSet structure(Code structure, List<Code> modifiers) {
    DataSet item = CodeItems.item(structure);
    if (!modifiers.isEmpty()) {
      item.put(Tags.PrimaryAnatomicStructureModifierSequence, CodeItems.items(modifiers));
    }
    return item;
  }
}
