package org.vestibule.dental;

import java.util.List;
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
  private static final Code FACE_CORRECTED =
      new Code(SCHEME, "mirror-corrected", "Mirror image, corrected");

  private static final String CORRECTED = "787610003";

  /** CID 4065, edition 2026b: corrected, and corrected in the three ways that it names. */
  private static final List<String> ALL_CORRECTED =
      List.of(CORRECTED, "789310004", "789311000", "789312007");

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

  /** The modifier for a picture of this view that was a mirror image and no longer is. */
  static Code mirrorCorrected(View view) {
    return view.showsFace()
        ? FACE_CORRECTED
        : ContextGroup.of(4065)
            .flatMap(group -> group.sct(CORRECTED))
            .orElseThrow(() -> new IllegalStateException("CID 4065 lacks " + CORRECTED));
  }

  /** True if the modifier says that the picture was a mirror image and no longer is. */
  public static boolean saysCorrected(Code modifier) {
    return modifier.sameConcept(FACE_CORRECTED)
        || (modifier.scheme().equals("SCT") && ALL_CORRECTED.contains(modifier.value()));
  }

  /** True if the code is of our own scheme, or of a practice's. */
  public static boolean isOwn(Code code) {
    return code.scheme().equals(SCHEME) || code.scheme().equals(PRACTICE_SCHEME);
  }
}
