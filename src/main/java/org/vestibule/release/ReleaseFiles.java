package org.vestibule.release;

/** Where things lie in a release. */
final class ReleaseFiles {

  static final String PAGE = "index.html";
  static final String SHEET = "contact-sheet.pdf";
  static final String MANIFEST = "manifest.json";

  private ReleaseFiles() {}

  static String picture(String name, Format format) {
    return format == Format.DICOM ? "dicom/" + name + ".dcm" : "jpeg/" + name + ".jpg";
  }
}
