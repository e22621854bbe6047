package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.assign.Decision;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Code;
import org.vestibule.dental.Mirror;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * Mirror, retractor, contraster and the like as devices that may be visible (Device module, PS3.3
 * C.7.6.12; codes of CID 4072, a scheme of our own where it has none).
 */
final class DevicePart {

  private static final String MIRROR_KEY = "mirror";

  private DevicePart() {}

  static void write(DataSet to, Decision decision) {
    List<DataSet> devices = new ArrayList<>();
    for (Accessory accessory : accessories(decision)) {
      Code standard = accessory.code();
      Code code =
          standard != null
              ? standard
              : new Code(
                  CatalogueCode.SCHEME,
                  accessory.key().toUpperCase(java.util.Locale.ROOT),
                  accessory.name());
      devices.add(CodeItems.item(code).put(Tags.DeviceDescription, accessory.description()));
    }
    if (!devices.isEmpty()) {
      to.put(Tags.DeviceSequence, devices);
    }
  }

  /**
   * What a person named, and the mirror wherever one was used; a face that was stored mirrored was
   * not taken in an intraoral mirror.
   */
  private static List<Accessory> accessories(Decision decision) {
    List<Accessory> all = new ArrayList<>(decision.accessories());
    boolean mirrored = decision.mirror() == Mirror.AS_SHOT || decision.mirror() == Mirror.CORRECTED;
    if (mirrored
        && !decision.view().showsFace()
        && all.stream().noneMatch(a -> a.key().equals(MIRROR_KEY))) {
      AccessoryCatalogue.byKey(MIRROR_KEY).ifPresent(all::add);
    }
    return all;
  }
}
