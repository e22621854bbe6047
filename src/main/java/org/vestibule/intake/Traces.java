package org.vestibule.intake;

import com.drew.lang.GeoLocation;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.Set;
import org.vestibule.base.Outcome.Done;
import org.vestibule.jpeg.JpegStructure;

/**
 * Values of a photograph's Exif and XMP data that lead to one camera, one file or one place: serial
 * numbers, those in maker notes among them, unique numbers, the position. They are for searching
 * copies.
 *
 * @param texts in the spellings that texts use
 * @param bytes as a file holds them, in lower-case hexadecimal digits
 */
public record Traces(Set<String> texts, Set<String> bytes) {

  public static final Traces NONE = new Traces(Set.of(), Set.of());

  /** Fewer are padding, such as zeros, and stand in every file. */
  private static final int FEWEST_DIFFERENT = 3;

  public Traces {
    texts = Set.copyOf(texts);
    bytes = Set.copyOf(bytes);
  }

  /** The values in a file; none if it is no JPEG that can be read. */
  public static Traces of(byte[] file) {
    return JpegStructure.read(file) instanceof Done<JpegStructure> read
        ? of(file, read.value())
        : NONE;
  }

  /** The values in a file that is built so. */
  public static Traces of(byte[] file, JpegStructure structure) {
    Segments segments = new Segments(file, structure);
    ExifTags tags = segments.exif(new ArrayList<>());
    Set<String> texts = new LinkedHashSet<>();
    for (int tag : new int[] {Tag.BODY_SERIAL, Tag.LENS_SERIAL, Tag.UNIQUE_ID}) {
      String text = tags.text(tag);
      if (text != null) {
        texts.add(text);
      }
    }
    texts.addAll(SerialNumbers.inDirectories(tags.metadata()));
    texts.addAll(SerialNumbers.inMakerNote(tags));
    texts.addAll(SerialNumbers.inXmp(segments.xmp()));
    texts.removeIf(text -> text.chars().distinct().count() < FEWEST_DIFFERENT);
    GeoLocation place = tags.position();
    PlaceSpellings spellings = new PlaceSpellings();
    if (place != null) {
      spellings.degrees(place.getLatitude());
      spellings.degrees(place.getLongitude());
    }
    spellings.rationals(tags.rawPosition());
    texts.addAll(spellings.texts());
    return new Traces(texts, spellings.bytes());
  }
}
