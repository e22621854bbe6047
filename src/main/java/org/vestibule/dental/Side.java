package org.vestibule.dental;

/** The patient's side, never the viewer's. */
public enum Side {
  RIGHT("right", "24028007"),
  LEFT("left", "7771000");

  private final String words;
  private final String code;

  Side(String words, String code) {
    this.words = words;
    this.code = code;
  }

  public String words() {
    return words;
  }

  /** Right or Left (CID 244; CID 2 has the same two codes). */
  public Code code() {
    return ContextGroup.of(244)
        .flatMap(group -> group.sct(code))
        .orElseThrow(() -> new IllegalStateException("CID 244 lacks " + code));
  }
}
