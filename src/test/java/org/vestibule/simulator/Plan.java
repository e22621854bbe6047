package org.vestibule.simulator;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A day in the making: what really happens, what the list says, what lies on the phones. */
final class Plan {

  final Regime regime;
  final LocalDate date;
  final ZoneId zone;
  final List<SimulatedPatient> patients = new ArrayList<>();
  final List<Phone> phones = new ArrayList<>();
  final List<Sitting> sittings = new ArrayList<>();

  /** The visits as the list has them. */
  final List<SimulatedVisit> book = new ArrayList<>();

  final List<Shot> shots = new ArrayList<>();
  final List<RollFile> files = new ArrayList<>();

  /** True if a view card is photographed before each view. */
  boolean viewCards;

  /** True if patients' folders are called by their names, false if by their numbers. */
  boolean foldersByName;

  Plan(Regime regime, LocalDate date, ZoneId zone) {
    this.regime = regime;
    this.date = date;
    this.zone = zone;
  }

  /** The next patient on the same phone. */
  Optional<Sitting> after(Sitting sitting) {
    return sittings.stream()
        .filter(other -> other.phone == sitting.phone && other.begins.isAfter(sitting.begins))
        .min(Comparator.comparing(other -> other.begins));
  }

  /** The sittings that are followed by another on the same phone. */
  List<Sitting> followed() {
    return sittings.stream().filter(sitting -> after(sitting).isPresent()).toList();
  }

  List<Shot> shots(Shot.Role role) {
    return shots.stream().filter(shot -> shot.role == role).toList();
  }

  /** The shots of a sitting in the order in which they were taken. */
  List<Shot> shots(Sitting sitting) {
    return shots.stream()
        .filter(shot -> shot.sitting == sitting)
        .sorted(Comparator.comparing(shot -> shot.at))
        .toList();
  }

  List<Shot> shots(Sitting sitting, Shot.Role role) {
    return shots(sitting).stream().filter(shot -> shot.role == role).toList();
  }

  LocalDateTime lastShot(Sitting sitting) {
    List<Shot> all = shots(sitting);
    return all.get(all.size() - 1).at;
  }

  /** True unless the list should have a sitting's visit and hasn't. */
  boolean lists(Sitting sitting) {
    return book.stream().anyMatch(visit -> visit.key().equals(sitting.visit.key()));
  }

  /** The list's entry for what a sitting is about. */
  int bookEntry(Sitting sitting) {
    for (int i = 0; i < book.size(); i++) {
      if (book.get(i).key().equals(sitting.visit.key())) {
        return i;
      }
    }
    throw new IllegalStateException(sitting.visit.key() + " is not in the list");
  }
}
