package org.vestibule.flow;

import java.util.List;
import org.vestibule.intake.LeftOut;

/**
 * What a run did.
 *
 * @param filed photographs filed now
 * @param waiting photographs that wait, whether new or not, as far as they lie in the folder
 * @param unfinished photographs whose filing was begun and could not be completed now, wherever
 *     they lie, each with the reason
 * @param cards photographs of cards, kept and never filed
 * @param series what the visits' series still lack or have more than once, each a sentence
 * @param leftOut files that are no photographs, each with its reason
 * @param defects where the program failed on a photograph; the photograph itself is told of too
 * @param knownAlready photographs in the folder that were filed or rejected earlier
 * @param completed photographs of an interrupted run that were completed first
 * @param notes anything else a person may like to know
 * @param concerns anything else that a person should look into
 */
public record IngestReport(
    List<FiledPhoto> filed,
    List<WaitingPhoto> waiting,
    List<WaitingPhoto> unfinished,
    List<Aside> cards,
    List<String> series,
    List<LeftOut> leftOut,
    List<Defect> defects,
    int knownAlready,
    int completed,
    List<String> notes,
    List<String> concerns) {

  /**
   * The program failed on one photograph.
   *
   * @param name the file's name
   * @param failure for those who look for the defect
   */
  public record Defect(String name, Throwable failure) {}

  public IngestReport {
    filed = List.copyOf(filed);
    waiting = List.copyOf(waiting);
    unfinished = List.copyOf(unfinished);
    cards = List.copyOf(cards);
    series = List.copyOf(series);
    leftOut = List.copyOf(leftOut);
    defects = List.copyOf(defects);
    notes = List.copyOf(notes);
    concerns = List.copyOf(concerns);
  }

  /** True if a person has something to do. */
  public boolean needsPerson() {
    return !waiting.isEmpty()
        || !unfinished.isEmpty()
        || !defects.isEmpty()
        || !concerns.isEmpty()
        || leftOut.stream().anyMatch(file -> file.kind().needsPerson());
  }
}
