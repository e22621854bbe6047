package org.vestibule.deid;

import java.util.Set;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;

/**
 * Makes copies of VL Photographic Image objects without the patient's identity (PS3.15 E.1 to E.3),
 * or with no more of it than one purpose needs.
 *
 * <p>Preamble and file meta information are the program's own, and the picture's codestream is
 * bare. The same object and substitutes give the same bytes.
 */
public final class Deidentifier {

  private Deidentifier() {}

  /** A file without identity, marked with the codes of what was done. */
  public static Outcome<byte[]> deidentify(
      byte[] file, Confidentiality profile, Substitutes substitutes) {
    return Part10Reader.read(file)
        .then(
            read ->
                CleanPicture.of(deidentify(read.data(), profile, substitutes))
                    .then(data -> write(data, read)));
  }

  /** The same of a data set, whose picture is left as it is. */
  public static DataSet deidentify(DataSet data, Confidentiality profile, Substitutes substitutes) {
    DataSet copy = new Walk(new Rules(profile, Set.of()), substitutes).data(data);
    Marks.write(copy, data, profile);
    return copy;
  }

  /**
   * A file that still says whose it is, but holds only these of the attributes that the Basic
   * Profile would change; it carries none of the profile's codes.
   *
   * @param permitted tags at the top of the data set that the purpose needs
   */
  public static Outcome<byte[]> narrow(
      byte[] file, Set<Integer> permitted, Substitutes substitutes) {
    return Part10Reader.read(file)
        .then(
            read -> {
              Rules rules = new Rules(Confidentiality.BASIC, permitted);
              DataSet copy = new Walk(rules, substitutes).data(read.data());
              copy.put(Tags.PatientIdentityRemoved, "NO");
              return CleanPicture.of(copy).then(data -> write(data, read));
            });
  }

  private static Outcome<byte[]> write(DataSet data, DicomFile like) {
    return Part10Writer.write(data, like.transferSyntax());
  }
}
