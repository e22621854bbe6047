package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Code;
import org.vestibule.dental.Laid;
import org.vestibule.dental.Side;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * What the picture shows and how it lies: view, region, side and Patient Orientation (VL Image,
 * PS3.3 C.8.12.1; General Image, C.7.6.1).
 *
 * <p>The catalogue's view is always there in code: as the view itself where CID 4062 and 4063 have
 * none for it, otherwise as a modifier that narrows the standard's view down.
 */
final class ViewPart {

  private static final int VL_VIEW = 4062;
  private static final int DENTAL_VIEW = 4063;
  private static final int DENTAL_VIEW_MODIFIER = 4065;

  private ViewPart() {}

  static void write(DataSet to, View view, Laid laid) {
    to.put(Tags.PatientOrientation, laid.shown().right(), laid.shown().down());
    Side side = view.onlySide();
    to.put(Tags.ImageLaterality, laterality(side));
    to.put(Tags.ViewCodeSequence, viewItem(view, laid));
    DataSet region = CodeItems.item(view.region());
    if (side != null) {
      region.put(Tags.AnatomicRegionModifierSequence, CodeItems.item(side.code()));
    }
    to.put(Tags.AnatomicRegionSequence, region);
  }

  private static DataSet viewItem(View view, Laid laid) {
    Code standard = view.view();
    Code own = CatalogueCode.of(view);
    List<Code> modifiers = new ArrayList<>(laid.viewModifiers());
    if (standard != null) {
      modifiers.add(own);
    }
    DataSet item =
        CodeItems.item(standard == null ? own : standard, view.showsFace() ? VL_VIEW : DENTAL_VIEW);
    if (!modifiers.isEmpty()) {
      item.put(
          Tags.ViewModifierCodeSequence,
          modifiers.stream().map(code -> CodeItems.item(code, DENTAL_VIEW_MODIFIER)).toList());
    }
    return item;
  }

  /** R or L only where the region's modifier says so; the mouth as a whole is unpaired. */
  private static String laterality(@Nullable Side side) {
    if (side == null) {
      return "U";
    }
    return side == Side.RIGHT ? "R" : "L";
  }
}
