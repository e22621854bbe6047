package org.vestibule.flow;

import java.util.List;

/**
 * A photograph that was filed just now.
 *
 * @param id what people call it by
 * @param name the file's name
 * @param patient the patient in words
 * @param view name of the view
 * @param teeth the named teeth in words; empty if none
 * @param remarks how it was laid, cropped or trimmed, in words
 */
public record FiledPhoto(
    String id, String name, String patient, String view, String teeth, List<String> remarks) {

  public FiledPhoto {
    remarks = List.copyOf(remarks);
  }
}
