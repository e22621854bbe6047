package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.vestibule.assign.Decision;
import org.vestibule.dental.Area;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Laid;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.ToothPosition;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.jpeg.Transcoded;

/**
 * What is shown, in words for people, and what the standard has no better place for (Image
 * Comments, PS3.3 C.7.6.1): view, mirror correction, areas, stage, treatment, what stands at a
 * tooth's position, dropped edges, the person's note.
 */
final class CommentPart {

  private CommentPart() {}

  /** For readers of programs that show the comments and no codes. */
  private static void shown(Decision decision, Laid laid, List<String> sentences) {
    sentences.add("View: " + decision.view().name() + ".");
    if (laid.viewModifiers().stream().anyMatch(CatalogueCode::saysCorrected)) {
      sentences.add("Was a mirror image, shown corrected.");
    }
    List<Area> areas = decision.teeth().areas();
    if (!areas.isEmpty()) {
      sentences.add(
          (areas.size() == 1 ? "Area: " : "Areas: ")
              + areas.stream().map(Area::words).collect(Collectors.joining(", "))
              + ".");
    }
  }

  static void write(DataSet to, EncodeRequest request, boolean heldBack, Transcoded picture) {
    Decision decision = request.decision();
    List<String> sentences = new ArrayList<>();
    if (!request.part().isEmpty()) {
      sentences.add(
          "NOT THE WHOLE PHOTOGRAPH: its file is damaged, this is " + request.part() + ".");
    }
    shown(decision, request.laid(), sentences);
    if (heldBack) {
      sentences.add(ReleasePart.HOLD_BACK);
    }
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
