package org.vestibule.simulator;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoField;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Turns shots into files as the phones name and date them, and lays them into the inbox. */
final class Developing {

  private static final int LARGEST_NUMBER = 9999;

  private final Plan plan;
  private final Map<Phone, Boolean> reset = new HashMap<>();

  private Developing(Plan plan) {
    this.plan = plan;
  }

  static void develop(Plan plan) {
    Developing developing = new Developing(plan);
    plan.shots.stream()
        .sorted(Comparator.comparing((Shot shot) -> shot.at))
        .forEach(developing::shot);
  }

  private void shot(Shot shot) {
    Phone phone = shot.phone;
    if (phone.counterResetsAt != null
        && !shot.at.isBefore(phone.counterResetsAt)
        && reset.put(phone, true) == null) {
      phone.counter = 1;
    }
    int number = phone.counter;
    phone.counter = number == LARGEST_NUMBER ? 1 : number + 1;
    if (shot.deleted) {
      return;
    }
    Instant moment = shot.at.atZone(plan.zone).toInstant();
    ZonedDateTime clock = moment.atZone(phone.zone).plus(phone.errorAt(shot.at));
    String name = name(phone, number, clock.toLocalDateTime());
    String folder = folder(plan, shot);
    // The phone writes the file's time by its own clock, wrong as that may be.
    Instant written = moment.plus(phone.errorAt(shot.at)).truncatedTo(ChronoUnit.SECONDS);
    RollFile file = new RollFile(shot, folder, name, written, "content-" + plan.files.size());
    date(file, phone, clock);
    plan.files.add(file);
  }

  private static void date(RollFile file, Phone phone, ZonedDateTime clock) {
    LocalDateTime time = clock.toLocalDateTime();
    file.takenAt = time.truncatedTo(phone.writesSubsecond ? ChronoUnit.MILLIS : ChronoUnit.SECONDS);
    file.offset = phone.writesOffset ? ZoneOffset.from(clock) : null;
    file.subsecond =
        phone.writesSubsecond
            ? String.format(Locale.ROOT, "%03d", time.get(ChronoField.MILLI_OF_SECOND))
            : null;
  }

  private static String name(Phone phone, int number, LocalDateTime time) {
    return phone.naming == Phone.Naming.COUNTER
        ? String.format(Locale.ROOT, "IMG_%04d.JPG", number)
        : String.format(Locale.ROOT, "%1$tY%1$tm%1$td_%1$tH%1$tM%1$tS.jpg", time);
  }

  private static String folder(Plan plan, Shot shot) {
    if (!plan.regime.folders() || shot.sitting == null) {
      return shot.phone.folder;
    }
    return folderOf(plan, shot.sitting.patient);
  }

  /** The folder that the practice keeps for a patient. */
  static String folderOf(Plan plan, SimulatedPatient patient) {
    return plan.foldersByName ? patient.name() : patient.id();
  }

  /** Gives files of the same name in one folder another name, as a computer does that copies. */
  static void tellApart(Plan plan) {
    Set<String> taken = new HashSet<>();
    List<RollFile> inOrder =
        plan.files.stream()
            .sorted(Comparator.comparingInt((RollFile file) -> file.run))
            .collect(Collectors.toList());
    for (RollFile file : inOrder) {
      String stem = file.name.substring(0, file.name.lastIndexOf('.'));
      String extension = file.name.substring(file.name.lastIndexOf('.'));
      for (int i = 2; !taken.add(path(file)); i++) {
        file.name = stem + " (" + i + ")" + extension;
      }
    }
  }

  private static String path(RollFile file) {
    return (file.folder + "/" + file.name).toLowerCase(Locale.ROOT);
  }
}
