package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Advice;
import org.vestibule.flow.Practice;
import org.vestibule.flow.SeriesGaps;
import org.vestibule.flow.VisitBook;
import org.vestibule.flow.WaitingPhoto;
import org.vestibule.flow.WaitingPhotos;
import org.vestibule.flow.WaitingSheet;
import org.vestibule.flow.delivering.Undelivered;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists what waits for a person and why. */
@Command(
    name = "waiting",
    description = "List the photographs that wait for a person, why, and what to do.")
final class WaitingCommand extends PracticeCommand {

  @Option(
      names = "--sheet",
      paramLabel = "FILE",
      description = "Also write a page with the pictures, such as waiting.html.")
  private @Nullable String sheet;

  WaitingCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    List<WaitingPhoto> waiting = new WaitingPhotos(practice).all();
    if (sheet != null) {
      Path file = surroundings().path(sheet);
      if (WaitingSheet.write(practice, waiting, file) instanceof Refused<Path> refused) {
        return refuse(refused);
      }
      console().say("Wrote " + file.getFileName() + ": open it in a browser.");
    }
    List<WaitingPhoto> begun = new WaitingPhotos(practice).begun();
    if (waiting.isEmpty()) {
      console().say("Nothing waits.");
    } else {
      console().say(Counted.of(waiting.size(), "photograph") + " for a person to decide:");
      waiting.forEach(photo -> print(console(), photo));
      console().gap();
      console().say("To file one:  vestibule file ID --view ... --mirror ... --by YOUR-NAME");
    }
    if (!begun.isEmpty()) {
      console().gap();
      console().say(Counted.of(begun.size(), "photograph") + " begun and not finished:");
      begun.forEach(photo -> print(console(), photo));
    }
    if (new VisitBook(practice).all() instanceof Done<VisitList> visits) {
      IngestPrinter.series(console(), new SeriesGaps(practice).sentences(visits.value()));
    }
    boolean ended = sayWhatEnded(practice);
    return waiting.isEmpty() && begun.isEmpty() && !ended ? ExitCode.DONE : ExitCode.NEEDS_A_PERSON;
  }

  /** What came to an end on its way to an archive waits for a person too. */
  private boolean sayWhatEnded(Practice practice) {
    if (practice.settings().forward().destinations().isEmpty()) {
      return false;
    }
    Map<String, Integer> ended = new Undelivered(practice).deadEnds();
    if (!ended.isEmpty()) {
      console().gap();
      ended.forEach(new ForwardPrinter(console())::deadEnds);
    }
    return !ended.isEmpty();
  }

  static void print(Console console, WaitingPhoto photo) {
    console.gap();
    console.say(
        photo.id()
            + "  "
            + photo.name()
            + (photo.takenAt() == null ? "" : ", taken " + Times.words(photo.takenAt())));
    if (!photo.proposal().isEmpty()) {
      console.wrapped(2, "Known: " + facts(photo.proposal()));
    }
    for (WaitingPhoto.Reason reason : photo.reasons()) {
      console.reason(2, reason.sentence(), reason.advice());
    }
    for (Advice advice : photo.advice()) {
      console.wrapped(
          2,
          "Could be better: "
              + advice.kind()
              + " ("
              + advice.measure()
              + "). "
              + Ended.of(advice.whatToDo()));
    }
  }

  private static String facts(Map<String, String> proposal) {
    return new TreeMap<>(proposal)
        .entrySet().stream()
            .map(fact -> fact.getKey() + " " + fact.getValue())
            .collect(Collectors.joining(", "));
  }
}
