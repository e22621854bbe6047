package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.encode.Role;
import org.vestibule.jpeg.Preview;
import org.vestibule.release.JpegCopy;
import org.vestibule.release.SmallJpeg;
import org.vestibule.store.PhotoRef;
import org.vestibule.store.ledger.Intent;

/**
 * Photographs as they are looked at: of each its face, the crop if there is one, else the frame;
 * upright and true-handed, with the colour profile that the object keeps.
 */
public final class Faces {

  /**
   * What a page says about a picture.
   *
   * @param orientation where row and column run in the patient; empty if the object does not say
   * @param width samples in a row
   * @param height rows
   * @param facts in words, the clinical ones first
   */
  public record Facts(
      Optional<PatientOrientation> orientation,
      int width,
      int height,
      List<PhotoWords.Line> facts) {
    public Facts {
      facts = List.copyOf(facts);
    }
  }

  private final Practice practice;

  public Faces(Practice practice) {
    this.practice = practice;
  }

  /** Which object is the face; empty if the photograph is not filed. */
  public Optional<String> objectUid(ContentHash photo) {
    return face(photo).map(Intent::sopUid);
  }

  private Optional<Intent> face(ContentHash photo) {
    List<Intent> current = practice.store().ledger().intents().current(photo);
    return current.stream()
        .filter(one -> one.role() == Role.CROP)
        .findFirst()
        .or(() -> current.stream().findFirst());
  }

  /** The picture as a JPEG file. */
  public Outcome<byte[]> picture(ContentHash photo) throws IOException {
    return object(photo).then(JpegCopy::of);
  }

  /**
   * The picture small, made of its coefficients, as a JPEG file.
   *
   * @param longerSide in pixels, 1 to 4096
   */
  public Outcome<byte[]> small(ContentHash photo, int longerSide) throws IOException {
    Outcome<DataSet> found = object(photo);
    if (!(found instanceof Done<DataSet> object)) {
      return ((Refused<DataSet>) found).as();
    }
    return Codestream.of(object.value())
        .then(jpeg -> Preview.of(jpeg, longerSide, Turn.NONE))
        .map(raster -> JpegCopy.of(SmallJpeg.of(raster), object.value()));
  }

  public Outcome<Facts> facts(ContentHash photo) throws IOException {
    return object(photo)
        .map(
            object ->
                new Facts(
                    PatientOrientation.parse(
                        String.join("\\", object.strings(Tags.PatientOrientation))),
                    (int) object.integer(Tags.Columns).orElse(1),
                    (int) object.integer(Tags.Rows).orElse(1),
                    new KeptPhoto(practice).words(object, photo)));
  }

  /** The object that is looked at. */
  Outcome<DataSet> object(ContentHash photo) throws IOException {
    Role role = face(photo).map(Intent::role).orElse(Role.FRAME);
    return new KeptPhoto(practice).object(new PhotoRef(photo, role));
  }
}
