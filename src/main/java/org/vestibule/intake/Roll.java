package org.vestibule.intake;

import java.util.List;

/**
 * What a folder held: photographs in the order of their names, and everything else.
 *
 * @param photos the photographs, each content once
 * @param leftOut every other file, with its reason
 */
public record Roll(List<Photo> photos, List<LeftOut> leftOut) {

  public Roll {
    photos = List.copyOf(photos);
    leftOut = List.copyOf(leftOut);
  }

  /**
   * Groups of two or more photographs that show one shot, such as an edited copy and its original:
   * one case for a person, never two filings.
   */
  public List<List<Photo>> sameShot() {
    return SameShot.groups(photos);
  }
}
