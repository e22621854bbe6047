package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.assign.Decision;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.ToothPosition;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.jpeg.Transcoded;

/**
 * What the standard has no better place for, in words (Image Comments, PS3.3 C.7.6.1): stage,
 * treatment, what stands at a tooth's position, dropped edges, the person's note.
 */
final class CommentPart {

  private CommentPart() {}

  static void write(DataSet to, Decision decision, Transcoded picture) {
    List<String> sentences = new ArrayList<>();
    if (decision.stage() != null) {
      sentences.add("Stage: " + decision.stage().words() + ".");
    }
    if (!decision.treatment().isEmpty()) {
      sentences.add("Treatment: " + decision.treatment() + ".");
    }
    for (ToothPosition position : decision.teeth().positions()) {
      if (position.occupant() != Occupant.TOOTH) {
        sentences.add("At the position: " + position.words() + ".");
      }
    }
    if (picture.trimmedColumns() > 0 || picture.trimmedRows() > 0) {
      sentences.add(
          "Edges that could not be turned without re-encoding were dropped: "
              + picture.trimmedColumns()
              + " columns, "
              + picture.trimmedRows()
              + " rows.");
    }
    if (!decision.note().isEmpty()) {
      sentences.add("Note: " + decision.note());
    }
    if (!sentences.isEmpty()) {
      String text = String.join(" ", sentences);
      to.put(Tags.ImageComments, Fitting.cut(text, Fitting.LT_CHARACTERS));
    }
  }
}
