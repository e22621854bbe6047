package org.vestibule.encode;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.vestibule.deid.TextCleaner;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ToothPosition;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;

/**
 * The texts that an object gets from this program's own tables and measures: these identify nobody.
 * Of a comment the sentences stay that are such texts; what a person wrote goes.
 */
public final class OwnTexts implements TextCleaner {

  public static final OwnTexts STANDARD = new OwnTexts();

  private static final String ROWS = "rows \\d+ to \\d+ of \\d+";

  /** Those that hold numbers of samples or rows. */
  private static final List<Pattern> MEASURED =
      List.of(
          Pattern.compile("NOT THE WHOLE PHOTOGRAPH: its file is damaged, this is " + ROWS + "\\."),
          Pattern.compile(
              "Edges that could not be turned without re-encoding were dropped: \\d+ columns, \\d+"
                  + " rows\\."),
          Pattern.compile(
              "Sound part of a damaged file, nothing re-encoded: "
                  + ROWS
                  + " as the file stores them"),
          Pattern.compile(
              "Lossless crop at block boundaries, nothing re-encoded: \\d+ x \\d+ samples from"
                  + " column \\d+, row \\d+ of the source image"));

  private final Set<String> texts = new HashSet<>();

  private OwnTexts() {
    texts.add("Dental photographs");
    texts.add("Was a mirror image, shown corrected.");
    texts.add(ReleasePart.HOLD_BACK);
    for (View view : ViewCatalogue.standard().all()) {
      texts.add("View: " + view.name() + ".");
      for (Role role : Role.values()) {
        texts.add(SeriesWords.of(view, role, true).description());
        texts.add(SeriesWords.of(view, role, false).description());
      }
    }
    for (Stage stage : Stage.values()) {
      texts.add("Stage: " + stage.words() + ".");
    }
    for (Tooth tooth : Tooth.all()) {
      for (Occupant occupant : Occupant.values()) {
        texts.add("At the position: " + new ToothPosition(tooth, occupant).words() + ".");
      }
    }
  }

  @Override
  public Optional<String> clean(String text) {
    if (isOwn(text)) {
      return Optional.of(text);
    }
    List<String> own = new ArrayList<>();
    for (String sentence : text.split("(?<=\\.) +", -1)) {
      if (isOwn(sentence)) {
        own.add(sentence);
      }
    }
    return own.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", own));
  }

  private boolean isOwn(String text) {
    return texts.contains(text)
        || MEASURED.stream().anyMatch(pattern -> pattern.matcher(text).matches());
  }
}
