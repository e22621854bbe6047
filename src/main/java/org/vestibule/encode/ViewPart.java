package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Code;
import org.vestibule.dental.Laid;
import org.vestibule.dental.Side;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * What the picture shows and how it lies: view, region, teeth, side and Patient Orientation (VL
 * Image, PS3.3 C.8.12.1; General Image, C.7.6.1).
 */
final class ViewPart {

  /** PS3.16 CID 244, edition 2026b; CID 2 has the same two codes. */
  private static final Code RIGHT = new Code("SCT", "24028007", "Right");

  private static final Code LEFT = new Code("SCT", "7771000", "Left");

  private ViewPart() {}

  static void write(DataSet to, View view, Teeth teeth, Laid laid) {
    to.put(Tags.PatientOrientation, laid.shown().right(), laid.shown().down());
    to.put(Tags.ImageLaterality, laterality(view.side()));
    Code code = view.view();
    if (code != null) {
      DataSet item = CodeItems.item(code);
      if (!laid.viewModifiers().isEmpty()) {
        item.put(Tags.ViewModifierCodeSequence, CodeItems.items(laid.viewModifiers()));
      }
      to.put(Tags.ViewCodeSequence, item);
    }
    DataSet region = CodeItems.item(view.region());
    if (view.side() != null) {
      region.put(
          Tags.AnatomicRegionModifierSequence,
          CodeItems.item(view.side() == Side.RIGHT ? RIGHT : LEFT));
    }
    to.put(Tags.AnatomicRegionSequence, region);
    List<Code> structures = structures(view, teeth);
    if (!structures.isEmpty()) {
      to.put(Tags.PrimaryAnatomicStructureSequence, CodeItems.items(structures));
    }
    if (view.showsFace()) {
      to.put(Tags.RecognizableVisualFeatures, "YES");
    }
  }

  /** The arch of an arch view, then the teeth that a person named; never the usual teeth. */
  private static List<Code> structures(View view, Teeth teeth) {
    List<Code> structures = new ArrayList<>();
    Code structure = view.structure();
    if (structure != null) {
      structures.add(structure);
    }
    teeth.teeth().forEach(tooth -> structures.add(tooth.code()));
    return structures;
  }

  /** R or L only where the region's modifier says so; the mouth as a whole is unpaired. */
  private static String laterality(@Nullable Side side) {
    if (side == null) {
      return "U";
    }
    return side == Side.RIGHT ? "R" : "L";
  }
}
