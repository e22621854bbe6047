package org.vestibule.dental;

/**
 * At which edge of the raw picture the incisors lie. Raw is as the file stores it, before any Exif
 * orientation; what a person sees on a preview is converted by the caller.
 */
public enum Incisors {
  TOP,
  BOTTOM,
  LEFT,
  RIGHT
}
