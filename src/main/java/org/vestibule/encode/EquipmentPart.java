package org.vestibule.encode;

import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** The practice, and this program as what laid the picture (PS3.3 C.7.5.1 and C.12.1). */
final class EquipmentPart {

  private EquipmentPart() {}

  static void write(DataSet to, String institution) {
    if (!institution.isEmpty()) {
      to.put(Tags.InstitutionName, Fitting.cut(institution, Fitting.LO_CHARACTERS));
    }
    DataSet program =
        CodeItems.purpose(Recipe.MODIFYING_EQUIPMENT)
            .put(Tags.Manufacturer, Recipe.SOFTWARE)
            .put(Tags.ManufacturerModelName, Recipe.SOFTWARE)
            .put(Tags.SoftwareVersions, "recipe " + Recipe.VERSION)
            .put(
                Tags.ContributionDescription,
                "Turned, mirrored or cropped without re-encoding; file metadata removed");
    to.put(Tags.ContributingEquipmentSequence, program);
  }
}
