package org.vestibule.flow;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.LeftOut;

/** What a run has done so far, gathered for its report. */
final class Tally {

  private final List<FiledPhoto> filed = new ArrayList<>();
  private final List<WaitingPhoto> waiting = new ArrayList<>();
  private final List<WaitingPhoto> unfinished = new ArrayList<>();
  private final List<IngestReport.Defect> defects = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<String> concerns = new ArrayList<>();
  private final Set<ContentHash> settled = new HashSet<>();
  private final List<Aside> cards = new ArrayList<>();
  private int knownAlready;
  private int completed;

  void filed(FiledPhoto photo) {
    filed.add(photo);
  }

  void completed(ContentHash hash, FiledPhoto photo) {
    settled.add(hash);
    filed.add(photo);
    completed++;
  }

  void waits(WaitingPhoto photo) {
    settled.add(photo.hash());
    waiting.add(photo);
  }

  void unfinished(WaitingPhoto photo) {
    settled.add(photo.hash());
    unfinished.add(photo);
  }

  void card(ContentHash hash, Aside card) {
    settled.add(hash);
    cards.add(card);
  }

  void defect(String name, Throwable failure) {
    defects.add(new IngestReport.Defect(name, failure));
  }

  void known() {
    knownAlready++;
  }

  /** True if this run has dealt with the photograph. */
  boolean hasSettled(ContentHash hash) {
    return settled.contains(hash);
  }

  void note(String sentence) {
    notes.add(sentence);
  }

  /** Something that a person should look into, whatever is filed or waits. */
  void concern(String sentence) {
    concerns.add(sentence);
  }

  IngestReport report(List<LeftOut> leftOut, List<String> series) {
    return new IngestReport(
        filed,
        waiting,
        unfinished,
        cards,
        series,
        leftOut,
        defects,
        knownAlready,
        completed,
        notes,
        concerns);
  }
}
