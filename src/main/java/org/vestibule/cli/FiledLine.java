package org.vestibule.cli;

import org.vestibule.flow.FiledPhoto;

/** What was filed, echoed in words so that a person can see a wrong tooth or side at once. */
final class FiledLine {

  private FiledLine() {}

  static String of(FiledPhoto photo) {
    return "Filed "
        + photo.id()
        + " ("
        + photo.name()
        + "): "
        + photo.patient()
        + ", visit "
        + photo.visit()
        + ", "
        + photo.view()
        + (photo.teeth().isEmpty() ? "" : ", " + photo.teeth())
        + (photo.remarks().isEmpty() ? "" : "; " + String.join("; ", photo.remarks()))
        + ".";
  }
}
