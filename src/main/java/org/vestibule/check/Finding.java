package org.vestibule.check;

import org.vestibule.dicom.Tags;

/**
 * One thing that the checker found. It never holds a value of the object, only what should be.
 *
 * @param path keywords from the top of the data set, items counted from 1, such as {@code
 *     ViewCodeSequence[1]>CodeValue}
 * @param tag the element's tag, or 0 if the finding is about the file as a whole
 * @param sentence what was found and what was expected
 * @param section where the standard says so, such as {@code PS3.3 C.8.12.1}
 */
public record Finding(Severity severity, String path, int tag, String sentence, String section) {

  /** The finding as one line. */
  public String words() {
    boolean named = tag != 0 && !path.endsWith(Tags.text(tag));
    String where = named ? path + " " + Tags.text(tag) : path;
    return severity.words() + ": " + where + " " + sentence + " [" + section + "]";
  }
}
