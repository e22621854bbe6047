package org.vestibule.intake;

/** Why a file in the folder did not become a photograph. */
public enum LeftOutKind {
  NOT_SETTLED("still changing", Care.COMES_BACK),
  PARTIAL_COPY("a copy that isn't finished", Care.COMES_BACK),
  CLOUD_PLACEHOLDER("not downloaded yet", Care.COMES_BACK),
  DUPLICATE("the same photograph twice", Care.NONE),
  SIDECAR("a companion file", Care.NONE),
  VIDEO_COMPANION("the moving part of a photograph", Care.NONE),
  SYSTEM_FILE("a file of the operating system", Care.NONE),
  LIST("a list", Care.NONE),
  NOT_A_PICTURE("not a picture", Care.NONE),
  EMPTY("empty", Care.PERSON),
  DAMAGED("damaged or cut short", Care.PERSON),
  HEIC("HEIC or AVIF", Care.PERSON),
  OTHER_PICTURE("a picture of another kind", Care.PERSON),
  VIDEO("a video", Care.PERSON),
  TOO_LARGE("too large", Care.PERSON),
  LINK("a link", Care.PERSON),
  UNREADABLE("can't be read", Care.PERSON),
  UNREADABLE_FOLDER("a folder that can't be read", Care.PERSON);

  private enum Care {
    NONE,
    COMES_BACK,
    PERSON
  }

  private final String words;
  private final Care care;

  LeftOutKind(String words, Care care) {
    this.words = words;
    this.care = care;
  }

  /** The kind in words. */
  public String words() {
    return words;
  }

  /** True if a person has something to decide or do, because it may be a clinical photograph. */
  public boolean needsPerson() {
    return care == Care.PERSON;
  }

  /** True if the next run is expected to take the file, with nothing to do for anybody. */
  public boolean comesBack() {
    return care == Care.COMES_BACK;
  }
}
