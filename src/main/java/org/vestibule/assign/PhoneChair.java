package org.vestibule.assign;

/**
 * The chair at which a phone always stays, so that only visits at that chair count for it.
 *
 * @param folder below the inbox in which its photographs arrive; empty for any
 * @param camera the model as the camera writes it; empty for any
 * @param chair as the visit list writes it
 */
public record PhoneChair(String folder, String camera, String chair) {

  public PhoneChair {
    if (chair.isBlank() || (folder.isBlank() && camera.isBlank())) {
      throw new IllegalArgumentException("a chair is named, and for which phone");
    }
  }

  boolean covers(Device device) {
    return device.isMeant(folder, camera);
  }
}
