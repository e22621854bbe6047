package org.vestibule.dicom.net;

import java.util.List;
import java.util.Set;
import org.vestibule.dicom.Implementation;

/**
 * The user information item, as far as it matters here (PS3.8 D.1, PS3.7 D.3.3).
 *
 * @param mostBodyBytes the longest P-DATA-TF body that the sender of this item takes; 0 for any
 * @param relational kinds of query for which questions below the level of patient or study need not
 *     name what is above (PS3.7 D.3.3.5, PS3.4 C.5.1.1): asked for, or granted
 */
record UserInformation(
    long mostBodyBytes,
    String classUid,
    String versionName,
    List<RoleSelection> roles,
    Set<String> relational) {

  UserInformation {
    roles = List.copyOf(roles);
    relational = Set.copyOf(relational);
  }

  static UserInformation ours(List<RoleSelection> roles) {
    return ours(roles, Set.of());
  }

  static UserInformation ours(List<RoleSelection> roles, Set<String> relational) {
    return new UserInformation(
        Pdu.MOST_BODY_BYTES,
        Implementation.CLASS_UID,
        Implementation.VERSION_NAME,
        roles,
        relational);
  }
}
