package org.vestibule.flow.look;

import java.util.List;

/**
 * A page that lists photographs for people: what is counted, what to know, and then card by card.
 *
 * @param title its title
 * @param lead a sentence or two below the title
 * @param caution what must not happen with the page
 * @param tallies numbers at its head
 * @param glossary words used on the cards and what they mean
 * @param glossaryHeading heading above those words
 * @param sections its parts in order
 * @param closing a sentence at its foot
 */
public record Sheet(
    String title,
    String lead,
    String caution,
    List<Tally> tallies,
    String glossaryHeading,
    List<Fact> glossary,
    List<SheetSection> sections,
    String closing) {

  /** For every page with patients on it. */
  public static final String CAUTION =
      "This page shows photographs of patients. It belongs in the practice: keep it off mail,"
          + " messengers and private clouds, and delete it when you are done.";

  public Sheet {
    tallies = List.copyOf(tallies);
    glossary = List.copyOf(glossary);
    sections = List.copyOf(sections);
  }
}
