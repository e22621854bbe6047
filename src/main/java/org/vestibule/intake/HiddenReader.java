package org.vestibule.intake;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.jpeg.Embedded;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.Trailing;

/** Says what hides in a file. The sentences name the kind and never the value. */
final class HiddenReader {

  private final JpegStructure structure;
  private final ExifTags tags;
  private final String xmp;
  private final List<Hidden> found = new ArrayList<>();

  private HiddenReader(Segments segments, ExifTags tags) {
    this.structure = segments.structure();
    this.tags = tags;
    this.xmp = segments.xmp();
  }

  static List<Hidden> find(Segments segments, ExifTags tags) {
    HiddenReader reader = new HiddenReader(segments, tags);
    reader.persons();
    reader.cameraData();
    reader.pictures();
    reader.texts();
    return reader.found;
  }

  private void persons() {
    add(
        tags.hasPosition() || structure.has(Embedded.GPS) || xmp.contains("exif:GPSLatitude"),
        Hidden.Kind.POSITION,
        "the place where it was taken (GPS)");
    add(
        hasAny(Tag.BODY_SERIAL, Tag.LENS_SERIAL) || xmp.contains("SerialNumber"),
        Hidden.Kind.SERIAL_NUMBER,
        "serial numbers that tie it to one person's phone or camera");
    add(
        hasAny(Tag.OWNER, Tag.ARTIST, Tag.COPYRIGHT, Tag.PHOTOGRAPHER, Tag.WINDOWS_AUTHOR)
            || hasAny(Tag.HOST_COMPUTER),
        Hidden.Kind.OWNER,
        "names of the camera's owner, the photographer or their computer");
    add(
        hasAny(Tag.IMAGE_DESCRIPTION, Tag.USER_COMMENT, Tag.IMAGE_TITLE, Tag.WINDOWS_TITLE)
            || hasAny(Tag.WINDOWS_COMMENT, Tag.WINDOWS_KEYWORDS, Tag.WINDOWS_SUBJECT),
        Hidden.Kind.CAPTION,
        "captions or comments that somebody or some program wrote");
  }

  private void cameraData() {
    add(
        hasAny(Tag.UNIQUE_ID),
        Hidden.Kind.UNIQUE_ID,
        "a unique number that ties every copy to this one file");
    add(
        tags.has(Tag.MAKER_NOTE) || structure.has(Embedded.MAKER_NOTE),
        Hidden.Kind.MAKER_NOTE,
        "a maker note, which may hold faces, places and serial numbers");
  }

  private void pictures() {
    add(
        tags.hasThumbnail()
            || structure.has(Embedded.EXIF_THUMBNAIL)
            || structure.has(Embedded.JFIF_THUMBNAIL)
            || structure.has(Embedded.PHOTOSHOP_THUMBNAIL),
        Hidden.Kind.THUMBNAIL,
        "a small copy of the picture, which may show what a crop took away");
    add(
        structure.has(Embedded.MULTI_PICTURE) || structure.isFollowedBy(Trailing.Kind.JPEG_PICTURE),
        Hidden.Kind.SECOND_PICTURE,
        "a second picture behind the first");
    add(
        structure.has(Embedded.GAIN_MAP) || xmp.contains("GainMap") || xmp.contains("hdrgm:"),
        Hidden.Kind.GAIN_MAP,
        "a brightness map of the scene (gain map)");
    add(
        xmp.contains("GDepth:") || xmp.contains("Depth:Format") || xmp.contains("DepthMap"),
        Hidden.Kind.DEPTH_MAP,
        "a depth map, from which a face can be modelled");
    add(
        structure.isFollowedBy(Trailing.Kind.VIDEO),
        Hidden.Kind.VIDEO,
        "a short video, perhaps with voices");
  }

  private void texts() {
    add(
        structure.has(Embedded.XMP) || structure.has(Embedded.EXTENDED_XMP),
        Hidden.Kind.XMP,
        "XMP data: history, captions, names");
    add(structure.has(Embedded.IPTC), Hidden.Kind.IPTC, "IPTC data: captions, names, places");
    add(structure.has(Embedded.COMMENT), Hidden.Kind.COMMENT, "a comment that nobody sees");
    add(
        structure.has(Embedded.OTHER_APPLICATION_DATA)
            || structure.has(Embedded.PHOTOSHOP)
            || structure.isFollowedBy(Trailing.Kind.OTHER),
        Hidden.Kind.OTHER,
        "data of a program, of unknown content");
  }

  private boolean hasAny(int... tagNumbers) {
    for (int tag : tagNumbers) {
      if (tags.filled(tag)) {
        return true;
      }
    }
    return false;
  }

  private void add(boolean present, Hidden.Kind kind, String sentence) {
    if (present) {
      found.add(new Hidden(kind, sentence));
    }
  }
}
