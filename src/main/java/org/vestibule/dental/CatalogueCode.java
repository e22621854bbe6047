package org.vestibule.dental;

import java.util.Optional;

/**
 * Codes of our own coding scheme, for what the context groups of PS3.16 have no code for. A private
 * scheme's designator begins with 99 (PS3.3 8.2, from memory).
 */
public final class CatalogueCode {

  /** The scheme of the views and accessories that come with the program. */
  public static final String SCHEME = "99VESTIBULE";

  /** The scheme of views from a practice's own file: another practice may use the same keys. */
  public static final String PRACTICE_SCHEME = "99VESTIBULE-OWN";

  /** Of a face: CID 4065 has this for intraoral pictures only. */
  public static final Code MIRROR_CORRECTED =
      new Code(SCHEME, "mirror-corrected", "Mirror image, corrected");

  private CatalogueCode() {}

  /** The catalogue's view as a code: its key, and its name as the meaning. */
  public static Code of(View view) {
    boolean standard = ViewCatalogue.standard().byKey(view.key()).filter(view::equals).isPresent();
    return new Code(standard ? SCHEME : PRACTICE_SCHEME, view.key(), view.name());
  }

  /** The standard catalogue's view that a code names. */
  public static Optional<View> view(Code code) {
    return code.scheme().equals(SCHEME)
        ? ViewCatalogue.standard().byKey(code.value())
        : Optional.empty();
  }

  /** True if the code is of our own scheme, or of a practice's. */
  public static boolean isOwn(Code code) {
    return code.scheme().equals(SCHEME) || code.scheme().equals(PRACTICE_SCHEME);
  }
}
