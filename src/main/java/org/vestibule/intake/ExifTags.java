package org.vestibule.intake;

import com.drew.lang.ByteArrayReader;
import com.drew.lang.GeoLocation;
import com.drew.lang.Rational;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.StringValue;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.ExifThumbnailDirectory;
import com.drew.metadata.exif.GpsDirectory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The Exif values of one picture by tag number (CIPA DC-008, from memory). Directories that
 * describe the thumbnail are left aside, except to say that there is one.
 */
final class ExifTags {

  private static final String PREAMBLE = "Exif\0\0";

  /** Blanks and zeros, perhaps behind the character code of UserComment (DC-008, from memory). */
  private static final Pattern PADDING = Pattern.compile("(ASCII|UNICODE|JIS)?[\\s\\x00]*");

  private final Metadata metadata;
  private final List<ExifDirectoryBase> main = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();

  private ExifTags(Metadata metadata) {
    this.metadata = metadata;
  }

  /** The values of a picture without Exif data. */
  static ExifTags none() {
    return new ExifTags(new Metadata());
  }

  /** Reads the parameter bytes of an APP1 segment that starts with {@code Exif}. */
  static ExifTags ofSegment(byte[] segment) {
    return read(segment, PREAMBLE.length());
  }

  /** Reads a TIFF stream that starts at this offset. */
  static ExifTags read(byte[] bytes, int offset) {
    Metadata metadata = new Metadata();
    ExifTags tags = new ExifTags(metadata);
    if (offset > bytes.length) {
      tags.warnings.add("the Exif data is empty");
      return tags;
    }
    try {
      new ExifReader().extract(new ByteArrayReader(bytes, offset), metadata);
    } catch (RuntimeException e) {
      tags.warnings.add(
          "the Exif data could be read in part only (" + e.getClass().getSimpleName() + ")");
    }
    tags.collect();
    return tags;
  }

  private void collect() {
    boolean damaged = false;
    List<ExifDirectoryBase> first = new ArrayList<>();
    for (Directory directory : metadata.getDirectories()) {
      if (directory instanceof ExifSubIFDDirectory sub) {
        main.add(sub);
        damaged |= directory.hasErrors();
      } else if (directory instanceof ExifIFD0Directory ifd0) {
        first.add(ifd0);
        damaged |= directory.hasErrors();
      }
    }
    main.addAll(first);
    if (damaged) {
      warnings.add("parts of the Exif data are damaged and were left aside");
    }
  }

  List<String> warnings() {
    return warnings;
  }

  /** True if the directory of this tag holds it, whatever its value. */
  boolean has(int tag) {
    return main.stream().anyMatch(directory -> directory.containsTag(tag));
  }

  /** True if the tag holds more than padding and the name of a character set. */
  boolean filled(int tag) {
    for (ExifDirectoryBase directory : main) {
      Object value = directory.getObject(tag);
      byte[] bytes =
          value instanceof StringValue string ? string.getBytes() : directory.getByteArray(tag);
      if (value instanceof String string) {
        bytes = string.getBytes(StandardCharsets.UTF_8);
      }
      if (bytes != null
          && !PADDING.matcher(new String(bytes, StandardCharsets.ISO_8859_1)).matches()) {
        return true;
      }
    }
    return false;
  }

  boolean hasPosition() {
    return metadata.getDirectoriesOfType(GpsDirectory.class).stream()
        .anyMatch(
            gps ->
                gps.containsTag(GpsDirectory.TAG_LATITUDE)
                    || gps.containsTag(GpsDirectory.TAG_LONGITUDE));
  }

  /** Where it was taken; null if that isn't said, or not in full. */
  @Nullable GeoLocation position() {
    return metadata.getDirectoriesOfType(GpsDirectory.class).stream()
        .map(GpsDirectory::getGeoLocation)
        .filter(Objects::nonNull)
        .findFirst()
        .orElse(null);
  }

  /** Latitude and longitude as they are stored, each three numbers; those that are said. */
  List<Rational[]> rawPosition() {
    List<Rational[]> found = new ArrayList<>();
    for (GpsDirectory gps : metadata.getDirectoriesOfType(GpsDirectory.class)) {
      for (int tag : new int[] {GpsDirectory.TAG_LATITUDE, GpsDirectory.TAG_LONGITUDE}) {
        Rational[] parts = gps.getRationalArray(tag);
        if (parts != null && parts.length == 3) {
          found.add(parts);
        }
      }
    }
    return found;
  }

  /** The bytes of the maker note; empty if there is none. */
  byte[] makerNote() {
    for (ExifDirectoryBase directory : main) {
      byte[] note = directory.getByteArray(Tag.MAKER_NOTE);
      if (note != null) {
        return note;
      }
    }
    return new byte[0];
  }

  /** Everything that was understood. */
  Metadata metadata() {
    return metadata;
  }

  boolean hasThumbnail() {
    return metadata.containsDirectoryOfType(ExifThumbnailDirectory.class);
  }

  /** Text without padding and control characters; null if there is none left. */
  @Nullable String text(int tag) {
    for (ExifDirectoryBase directory : main) {
      Object value = directory.getObject(tag);
      String text =
          value instanceof StringValue string
              ? string.toString(StandardCharsets.UTF_8)
              : value instanceof String string ? string : null;
      if (text != null) {
        int end = text.indexOf('\0');
        String clean =
            (end < 0 ? text : text.substring(0, end)).replaceAll("\\p{Cntrl}", " ").strip();
        if (!clean.isEmpty()) {
          return clean;
        }
      }
    }
    return null;
  }

  /** A whole number, the first of several; null if there is none. */
  @Nullable Integer integer(int tag) {
    for (ExifDirectoryBase directory : main) {
      if (!directory.containsTag(tag)) {
        continue;
      }
      try {
        return directory.getInt(tag);
      } catch (MetadataException e) {
        int[] several = directory.getIntArray(tag);
        if (several != null && several.length > 0) {
          return several[0];
        }
        warnings.add(String.format(Locale.ROOT, "Exif tag 0x%04X is not a number", tag));
        return null;
      }
    }
    return null;
  }

  /** True if the value is a rational whose numerator is 0: many tags then mean "not stated". */
  boolean numeratorIsZero(int tag) {
    for (ExifDirectoryBase directory : main) {
      if (directory.containsTag(tag)) {
        Rational value = directory.getRational(tag);
        return value != null && value.getNumerator() == 0;
      }
    }
    return false;
  }

  /** A number; null if there is none or it isn't finite (a rational with denominator 0). */
  @Nullable Double number(int tag) {
    for (ExifDirectoryBase directory : main) {
      if (directory.containsTag(tag)) {
        Double value = directory.getDoubleObject(tag);
        return value == null || !Double.isFinite(value) ? null : value;
      }
    }
    return null;
  }
}
