package org.vestibule.intake;

import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Numbers of one camera, one lens or one file, wherever a photograph's file holds them. */
final class SerialNumbers {

  private static final Pattern NAME =
      Pattern.compile(
          "serial number|unique id|uuid|content identifier|photo identifier",
          Pattern.CASE_INSENSITIVE);

  /** Names of the XMP properties; their prefixes differ (XMP part 2, from memory). */
  private static final Pattern PROPERTY =
      Pattern.compile(
          "[\\w-]+:\\w*(?:SerialNumber|UniqueID|DocumentID|InstanceID|GPSLatitude|GPSLongitude)"
              + "(?:\\s*=\\s*[\"']([^\"']*)[\"']|\\s*>\\s*([^<]*)<)");

  /** A run of characters in a maker note whose layout isn't known: letters and digits alone. */
  private static final Pattern RUN = Pattern.compile("[A-Za-z0-9][A-Za-z0-9-]{7,}");

  private static final int FEWEST_DIGITS = 4;
  private static final Pattern DAY = Pattern.compile("(?:19|20)\\d{6}(?:\\d{6})?");

  private SerialNumbers() {}

  /** What the directories that are understood, those of makers among them, call such a number. */
  static Set<String> inDirectories(Metadata metadata) {
    Set<String> found = new LinkedHashSet<>();
    for (Directory directory : metadata.getDirectories()) {
      for (com.drew.metadata.Tag tag : directory.getTags()) {
        if (NAME.matcher(tag.getTagName()).find()) {
          Stream.of(directory.getString(tag.getTagType()), tag.getDescription())
              .filter(text -> text != null && text.chars().anyMatch(Character::isDigit))
              .map(text -> text.replaceAll("\\p{Cntrl}", " ").strip())
              .forEach(found::add);
        }
      }
    }
    return found;
  }

  /**
   * Runs that may be serial numbers in a maker note; neither days nor words that stand in the names
   * of camera and lens, which a copy may hold.
   */
  static Set<String> inMakerNote(ExifTags tags) {
    Set<String> found = new LinkedHashSet<>();
    String names =
        Stream.of(Tag.MAKE, Tag.MODEL, Tag.LENS_MODEL)
            .map(tags::text)
            .map(String::valueOf)
            .reduce("", (all, name) -> all + "\n" + name.toLowerCase(Locale.ROOT));
    Matcher runs = RUN.matcher(new String(tags.makerNote(), StandardCharsets.ISO_8859_1));
    while (runs.find()) {
      String run = runs.group();
      boolean isNumber = run.chars().filter(Character::isDigit).count() >= FEWEST_DIGITS;
      if (isNumber
          && !DAY.matcher(run).matches()
          && !names.contains(run.toLowerCase(Locale.ROOT))) {
        found.add(run);
      }
    }
    return found;
  }

  /** The values of such properties; a position without the letter at its end. */
  static Set<String> inXmp(String xmp) {
    Set<String> found = new LinkedHashSet<>();
    Matcher properties = PROPERTY.matcher(xmp);
    while (properties.find()) {
      String value = properties.group(1) == null ? properties.group(2) : properties.group(1);
      String clean = value.replaceAll("\\p{Cntrl}", " ").strip();
      if (clean.matches("[\\d.,]+[NSEW]")) {
        clean = clean.substring(0, clean.length() - 1);
      }
      if (!clean.isEmpty()) {
        found.add(clean);
      }
    }
    return found;
  }
}
