package org.vestibule.encode;

import org.vestibule.deid.Confidentiality;
import org.vestibule.deid.Deidentifier;
import org.vestibule.deid.Substitutes;
import org.vestibule.dicom.DataSet;

/**
 * How an object is made without the patient's identity from the start (PS3.15 Annex E).
 *
 * @param profile the Basic Profile with the options that are carried out
 * @param substitutes what stands in the object instead
 */
public record WithoutIdentity(Confidentiality profile, Substitutes substitutes) {

  /** The object without identity, marked with the codes of what was done. */
  DataSet of(DataSet object) {
    return Deidentifier.deidentify(object, profile, substitutes);
  }
}
