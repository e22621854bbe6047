package org.vestibule.simulator.sorter;

import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.vestibule.assign.CaptureDeclaration;
import org.vestibule.assign.NamePattern;
import org.vestibule.assign.VisitList;
import org.vestibule.simulator.Regime;
import org.vestibule.simulator.SeenDay;
import org.vestibule.simulator.SimulatedVisit;

/** What the simulated practice has written down: visits, what folders mean, how it takes views. */
final class SimulatedLists {

  /** The incisors lie as the simulator's arches are always taken. */
  static final List<CaptureDeclaration> DECLARATIONS =
      Stream.of("Norda 5", "Norda 7 plus")
          .flatMap(
              camera ->
                  Stream.of(
                      declared("upper-occlusal", camera, "top"),
                      declared("lower-occlusal", camera, "bottom")))
          .toList();

  private static final NamePattern FOLDER_OF_PATIENT = NamePattern.parse("{patient}/*").orThrow();

  private SimulatedLists() {}

  private static CaptureDeclaration declared(String view, String camera, String incisors) {
    return CaptureDeclaration.of(view, camera, "as shot", incisors, "Bo Quillfeather").orThrow();
  }

  static List<NamePattern> patterns(SeenDay day) {
    Regime regime = day.regime();
    return regime.folders() ? List.of(FOLDER_OF_PATIENT) : List.of();
  }

  /** The list as the program reads it. Where nobody stated times, a visit takes the whole day. */
  static VisitList visits(SeenDay day) {
    if (day.visits().isEmpty()) {
      return VisitList.EMPTY;
    }
    List<String> rows = new ArrayList<>(List.of("visit,patient id,name,start,end,chair"));
    for (SimulatedVisit visit : day.visits()) {
      LocalDateTime start = visit.start();
      LocalDateTime end = visit.end();
      rows.add(
          String.join(
              ",",
              visit.key(),
              visit.patient().id(),
              visit.patient().name(),
              words(start == null ? day.date().atTime(0, 1) : start),
              words(end == null ? day.date().atTime(23, 59) : end),
              visit.chair()));
    }
    byte[] list = String.join("\n", rows).getBytes(StandardCharsets.UTF_8);
    return VisitList.parse(list, "visits", "").orThrow();
  }

  private static String words(LocalDateTime at) {
    return at.toLocalDate() + " " + at.toLocalTime();
  }
}
