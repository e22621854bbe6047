package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Says whose the private coding schemes are (SOP Common, PS3.3 C.12.1). */
final class SchemePart {

  private SchemePart() {}

  static void write(DataSet to, View view) {
    List<DataSet> schemes = new ArrayList<>();
    schemes.add(
        scheme(CatalogueCode.SCHEME, "Private: views and accessories of the program's catalogue")
            .put(Tags.CodingSchemeVersion, Recipe.CODES_VERSION));
    if (CatalogueCode.of(view).scheme().equals(CatalogueCode.PRACTICE_SCHEME)) {
      schemes.add(
          scheme(CatalogueCode.PRACTICE_SCHEME, "Private: views of the practice's own list"));
    }
    to.put(Tags.CodingSchemeIdentificationSequence, schemes);
  }

  private static DataSet scheme(String designator, String name) {
    return new DataSet()
        .put(Tags.CodingSchemeDesignator, designator)
        .put(Tags.CodingSchemeName, name)
        .put(Tags.CodingSchemeResponsibleOrganization, Recipe.SOFTWARE);
  }
}
