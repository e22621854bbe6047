package org.vestibule.intake;

import com.drew.lang.GeoLocation;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.Set;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.jpeg.JpegStructure;

/**
 * Values of a photograph's Exif data that lead to one camera, one file or one place: serial
 * numbers, the file's unique number, the position. They are for searching copies; nothing keeps
 * them.
 */
public final class Traces {

  /** About eleven metres. */
  private static final int DECIMALS = 4;

  /** Fewer are padding, such as zeros, and stand in every file. */
  private static final int FEWEST_DIFFERENT = 3;

  private final ExifTags tags;
  private final Set<String> values = new LinkedHashSet<>();

  private Traces(ExifTags tags) {
    this.tags = tags;
  }

  /** The values in spellings that texts use; none if the file is no JPEG that can be read. */
  public static Set<String> of(byte[] file) {
    Outcome<JpegStructure> structure = JpegStructure.read(file);
    if (!(structure instanceof Done<JpegStructure> read)) {
      return Set.of();
    }
    Traces traces = new Traces(new Segments(file, read.value()).exif(new ArrayList<>()));
    traces.number(Tag.BODY_SERIAL);
    traces.number(Tag.LENS_SERIAL);
    traces.number(Tag.UNIQUE_ID);
    GeoLocation place = traces.tags.position();
    boolean isSaid =
        place != null
            && Double.isFinite(place.getLatitude())
            && Double.isFinite(place.getLongitude());
    if (place != null && isSaid) {
      traces.degrees(place.getLatitude());
      traces.degrees(place.getLongitude());
    }
    return Set.copyOf(traces.values);
  }

  private void number(int tag) {
    String text = tags.text(tag);
    if (text != null && text.chars().distinct().count() >= FEWEST_DIFFERENT) {
      values.add(text);
    }
  }

  /** Without a sign: some write it, some write a letter. */
  private void degrees(double signed) {
    BigDecimal degrees = new BigDecimal(Math.abs(signed));
    values.add(degrees.setScale(DECIMALS, RoundingMode.DOWN).toPlainString());
    values.add(degrees.setScale(DECIMALS, RoundingMode.HALF_UP).toPlainString());
    long seconds = Math.round(Math.abs(signed) * 3600);
    String rest = seconds / 60 % 60 + "' " + seconds % 60;
    values.add(seconds / 3600 + " deg " + rest);
    values.add(seconds / 3600 + "\u00b0 " + rest);
    values.add((seconds / 3600 + "\u00b0" + rest).replace(" ", ""));
  }
}
