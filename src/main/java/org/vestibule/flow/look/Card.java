package org.vestibule.flow.look;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One photograph, or one file, on a sheet.
 *
 * @param title its name or id
 * @param picture what is shown, or null for a line of text
 * @param marks what the eye should find
 * @param facts labelled values
 * @param notes whole sentences
 */
public record Card(
    String title,
    @Nullable SheetPicture picture,
    List<Mark> marks,
    List<Fact> facts,
    List<String> notes) {

  public Card {
    marks = List.copyOf(marks);
    facts = List.copyOf(facts);
    notes = List.copyOf(notes);
  }
}
