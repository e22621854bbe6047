package org.vestibule.dicom.net;

import java.util.List;
import org.vestibule.dicom.Implementation;

/**
 * The user information item, as far as it matters here (PS3.8 D.1, PS3.7 D.3.3).
 *
 * @param mostBodyBytes the longest P-DATA-TF body that the sender of this item takes; 0 for any
 */
record UserInformation(
    long mostBodyBytes, String classUid, String versionName, List<RoleSelection> roles) {

  UserInformation {
    roles = List.copyOf(roles);
  }

  static UserInformation ours(List<RoleSelection> roles) {
    return new UserInformation(
        Pdu.MOST_BODY_BYTES, Implementation.CLASS_UID, Implementation.VERSION_NAME, roles);
  }
}
