package org.vestibule.cli;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.vestibule.flow.FiledPhoto;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.WaitingPhoto;
import org.vestibule.intake.LeftOut;

/** Prints what a run did: what was filed, what waits and why, what was left out. */
final class IngestPrinter {

  private final Console console;

  IngestPrinter(Console console) {
    this.console = console;
  }

  void print(IngestReport report, boolean dryRun) {
    for (String note : report.notes()) {
      console.wrapped(0, "Note: " + note);
    }
    filed(report.filed(), dryRun);
    waiting(report.waiting());
    leftOut(report.leftOut());
    summary(report, dryRun);
  }

  private void filed(List<FiledPhoto> filed, boolean dryRun) {
    if (filed.isEmpty()) {
      return;
    }
    console.heading(dryRun ? "Would be filed" : "Filed");
    Table table = new Table("photograph", "file", "patient", "view", "teeth", "how it was laid");
    for (FiledPhoto photo : filed) {
      table.row(
          photo.id(),
          photo.name(),
          photo.patient(),
          photo.view(),
          photo.teeth().isEmpty() ? "-" : photo.teeth(),
          photo.remarks().isEmpty() ? "as it was" : String.join("; ", photo.remarks()));
    }
    table.lines(0).forEach(console::say);
  }

  private void waiting(List<WaitingPhoto> waiting) {
    if (waiting.isEmpty()) {
      return;
    }
    console.heading("Waits for a person");
    for (WaitingPhoto photo : waiting) {
      console.say(photo.id() + "  " + photo.name());
      for (WaitingPhoto.Reason reason : photo.reasons()) {
        console.reason(4, reason.sentence(), reason.advice());
      }
    }
  }

  private void leftOut(List<LeftOut> leftOut) {
    List<LeftOut> worthAWord =
        leftOut.stream()
            .filter(file -> file.kind().needsPerson() || file.kind().comesBack())
            .toList();
    if (!worthAWord.isEmpty()) {
      console.heading("Not taken as photographs");
      for (LeftOut file : worthAWord) {
        console.say(file.shownName());
        console.reason(4, file.reason(), file.advice());
      }
    }
    String others =
        leftOut.stream()
            .filter(file -> !worthAWord.contains(file))
            .collect(
                Collectors.groupingBy(f -> f.kind().words(), TreeMap::new, Collectors.counting()))
            .entrySet()
            .stream()
            .map(IngestPrinter::counted)
            .collect(Collectors.joining(", "));
    if (!others.isEmpty()) {
      console.gap();
      console.wrapped(0, "Also there, and nothing to do about it: " + others + ".");
    }
  }

  private static String counted(Map.Entry<String, Long> kind) {
    return kind.getValue() + " x " + kind.getKey();
  }

  private void summary(IngestReport report, boolean dryRun) {
    console.gap();
    console.say(
        Counted.of(report.filed().size(), "photograph")
            + (dryRun ? " would be filed, " : " filed, ")
            + report.waiting().size()
            + " waiting, "
            + report.knownAlready()
            + " known from before, "
            + Counted.of(report.leftOut().size(), "other file")
            + "."
            + (report.completed() > 0
                ? " " + report.completed() + " left by an interrupted run completed."
                : ""));
  }
}
