package org.vestibule.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.vestibule.flow.Advice;
import org.vestibule.flow.Aside;
import org.vestibule.flow.FiledPhoto;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.WaitingPhoto;
import org.vestibule.flow.look.Say;
import org.vestibule.intake.LeftOut;

/** Prints what a run did: what was filed, what waits and why, what was left out. */
final class IngestPrinter {

  private final Console console;

  IngestPrinter(Console console) {
    this.console = console;
  }

  void print(IngestReport report, boolean dryRun) {
    for (String concern : report.concerns()) {
      console.wrapped(0, "Look into this: " + concern);
    }
    for (String note : report.notes()) {
      console.wrapped(0, "Note: " + note);
    }
    filed(report.filed(), dryRun);
    advice(report.filed());
    waiting("Waits for a person", report.waiting());
    waiting("Begun and not finished", report.unfinished());
    cards(report.cards());
    series(console, report.series());
    leftOut(report.leftOut());
    summary(report, dryRun);
  }

  /** Where the program failed on photographs, for whoever looks for the defect. */
  void traces(IngestReport report) {
    for (IngestReport.Defect defect : report.defects()) {
      console.complain("vestibule: the program failed on " + defect.name() + ":");
      defect.failure().printStackTrace(console.errors());
    }
  }

  private void filed(List<FiledPhoto> filed, boolean dryRun) {
    if (filed.isEmpty()) {
      return;
    }
    console.heading(dryRun ? "Would be filed" : "Filed");
    Table table =
        new Table("photograph", "file", "patient", "visit", "view", "teeth", "how it was laid");
    for (FiledPhoto photo : filed) {
      table.row(
          photo.id(),
          photo.name(),
          photo.patient(),
          photo.visit(),
          photo.view(),
          photo.teeth().isEmpty() ? "-" : photo.teeth(),
          photo.remarks().isEmpty() ? "as it was" : String.join("; ", photo.remarks()));
    }
    table.lines(0).forEach(console::say);
  }

  /** One thing at a time, with all photographs of which it is true. */
  private void advice(List<FiledPhoto> filed) {
    Map<String, List<String>> photos = new LinkedHashMap<>();
    Map<String, String> whatToDo = new LinkedHashMap<>();
    for (FiledPhoto photo : filed) {
      for (Advice advice : photo.advice()) {
        photos
            .computeIfAbsent(advice.kind(), kind -> new ArrayList<>())
            .add(photo.name() + " (" + advice.measure() + ")");
        whatToDo.put(advice.kind(), advice.whatToDo());
      }
    }
    if (!photos.isEmpty()) {
      console.heading("Filed, and could be better");
      photos.forEach(
          (kind, names) -> {
            console.wrapped(0, Say.capital(kind) + ": " + String.join(", ", names) + ".");
            console.wrapped(2, "What to do: " + whatToDo.get(kind));
          });
    }
  }

  private void waiting(String heading, List<WaitingPhoto> waiting) {
    if (waiting.isEmpty()) {
      return;
    }
    console.heading(heading);
    for (WaitingPhoto photo : waiting) {
      console.say(photo.id() + "  " + photo.name());
      for (WaitingPhoto.Reason reason : photo.reasons()) {
        console.reason(4, reason.sentence(), reason.advice());
      }
    }
  }

  /** What visits still lack of their series. */
  static void series(Console console, List<String> sentences) {
    if (!sentences.isEmpty()) {
      console.heading("What a series still lacks");
      sentences.forEach(sentence -> console.wrapped(0, Say.sentence(sentence)));
    }
  }

  private void cards(List<Aside> cards) {
    if (!cards.isEmpty()) {
      console.gap();
      console.wrapped(
          0,
          Counted.of(cards.size(), "photograph")
              + " of cards, kept and never filed: "
              + cards.stream().map(Aside::name).collect(Collectors.joining(", "))
              + ".");
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
            + (report.unfinished().isEmpty()
                ? ""
                : report.unfinished().size() + " begun and not finished, ")
            + (report.cards().isEmpty() ? "" : Counted.of(report.cards().size(), "card") + ", ")
            + report.knownAlready()
            + " known from before, "
            + Counted.of(report.leftOut().size(), "other file")
            + "."
            + (report.completed() > 0
                ? " " + report.completed() + " left by an interrupted run completed."
                : ""));
  }
}
