package org.vestibule.flow;

import java.util.List;
import org.vestibule.intake.LeftOut;

/**
 * What a run did.
 *
 * @param filed photographs filed now
 * @param waiting photographs that wait, whether new or not, as far as they lie in the folder
 * @param leftOut files that are no photographs, each with its reason
 * @param knownAlready photographs in the folder that were filed or rejected earlier
 * @param completed photographs of an interrupted run that were completed first
 * @param unkept photographs whose objects could not be kept; each has a note, and is tried again
 * @param notes anything else a person should know
 */
public record IngestReport(
    List<FiledPhoto> filed,
    List<WaitingPhoto> waiting,
    List<LeftOut> leftOut,
    int knownAlready,
    int completed,
    int unkept,
    List<String> notes) {

  public IngestReport {
    filed = List.copyOf(filed);
    waiting = List.copyOf(waiting);
    leftOut = List.copyOf(leftOut);
    notes = List.copyOf(notes);
  }

  /** True if a person has something to do. */
  public boolean needsPerson() {
    return !waiting.isEmpty() || leftOut.stream().anyMatch(file -> file.kind().needsPerson());
  }
}
