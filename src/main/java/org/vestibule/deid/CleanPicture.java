package org.vestibule.deid;

import java.io.ByteArrayOutputStream;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.jpeg.MetadataStrip;

/**
 * Takes what a JPEG codestream carries besides its picture (Exif, comments, thumbnails, data after
 * the end): Table E.1-1 speaks of attributes only.
 */
final class CleanPicture {

  private CleanPicture() {}

  /** The data set with a bare picture; refused where the picture can't be read as JPEG. */
  static Outcome<DataSet> of(DataSet data) {
    boolean encapsulated = data.element(Tags.PixelData).filter(Element::isEncapsulated).isPresent();
    if (!encapsulated) {
      return Outcome.done(data);
    }
    return MetadataStrip.of(joined(data.fragments(Tags.PixelData)))
        .map(bare -> data.copy().putFragments(Tags.PixelData, bare.bytes()));
  }

  private static byte[] joined(List<byte[]> fragments) {
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    fragments.forEach(whole::writeBytes);
    return whole.toByteArray();
  }
}
