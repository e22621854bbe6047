package org.vestibule.simulator;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What happens to the files after the phones have written them. */
final class FileFaults {

  private FileFaults() {}

  /** Edited on the phone: the time of the change is in the place of the time of the capture. */
  static Optional<String> editedTime(Plan plan, Dice dice) {
    List<RollFile> photos = clinical(plan);
    if (photos.isEmpty()) {
      return Optional.empty();
    }
    int count = dice.between(1, 3);
    for (int i = 0; i < count; i++) {
      RollFile file = dice.pick(photos);
      change(file, dice);
      retime(file, dice);
    }
    return Optional.of("up to " + count);
  }

  /** An edited copy stands beside the original. */
  static Optional<String> editedCopy(Plan plan, Dice dice) {
    List<RollFile> photos = clinical(plan);
    if (photos.isEmpty()) {
      return Optional.empty();
    }
    int count = dice.between(1, 3);
    for (int i = 0; i < count; i++) {
      RollFile original = dice.pick(photos);
      int dot = original.name.lastIndexOf('.');
      String stem = original.name.substring(0, dot);
      String end = original.name.substring(dot);
      String name =
          dice.pick(
              List.of(
                  stem + "(1)" + end, stem + "-edited" + end, stem.replace("IMG_", "IMG_E") + end));
      RollFile copy = original.copy(name.equals(original.name) ? stem + "-edited" + end : name);
      copy.content = original.content + "-edited-" + i;
      change(copy, dice);
      if (dice.chance(0.5)) {
        retime(copy, dice);
      }
      plan.files.add(copy);
    }
    return Optional.of(String.valueOf(count));
  }

  private static void change(RollFile file, Dice dice) {
    file.fileTime = file.fileTime.plus(Duration.ofMinutes(dice.between(30, 600)));
    file.edited = dice.chance(0.7);
  }

  private static void retime(RollFile file, Dice dice) {
    LocalDateTime taken = file.takenAt;
    if (taken != null) {
      file.takenAt = taken.plusMinutes(dice.between(5, 300)).withNano(0);
      file.subsecond = null;
    }
  }

  /** Some files come a run later, or two. */
  static Optional<String> lateFiles(Plan plan, Dice dice) {
    int count = 0;
    double share = dice.pick(List.of(0.02, 0.1, 0.3));
    for (RollFile file : plan.files) {
      if (dice.chance(share)) {
        file.run = dice.between(2, 3);
        count++;
      }
    }
    return count == 0 ? Optional.empty() : Optional.of(count + " files");
  }

  /** A whole piece of the day comes a run later than the rest. */
  static Optional<String> outOfOrder(Plan plan, Dice dice) {
    if (plan.files.size() < 4) {
      return Optional.empty();
    }
    int from = dice.between(0, plan.files.size() - 3);
    int to = dice.between(from + 1, plan.files.size() - 1);
    plan.files.subList(from, to).forEach(file -> file.run = 2);
    return Optional.of(to - from + " files in a row");
  }

  /** The same bytes again, under another name, in the same run or later. */
  static Optional<String> duplicates(Plan plan, Dice dice) {
    int count = dice.between(1, 5);
    for (int i = 0; i < count; i++) {
      RollFile original = dice.pick(new ArrayList<>(plan.files));
      int dot = original.name.lastIndexOf('.');
      RollFile copy =
          original.copy(original.name.substring(0, dot) + " copy" + original.name.substring(dot));
      copy.run = original.run + (dice.chance(0.5) ? 1 : 0);
      plan.files.add(copy);
    }
    return Optional.of(String.valueOf(count));
  }

  static Optional<String> wrongFolder(Plan plan, Dice dice) {
    List<RollFile> photos = clinical(plan);
    if (photos.isEmpty()) {
      return Optional.empty();
    }
    RollFile file = dice.pick(photos);
    List<String> others =
        plan.sittings.stream()
            .map(sitting -> Developing.folderOf(plan, sitting.patient))
            .filter(folder -> !folder.equals(file.folder))
            .toList();
    if (others.isEmpty()) {
      return Optional.empty();
    }
    file.folder = dice.pick(others);
    return Optional.of(file.name + " is in the folder " + file.folder);
  }

  /** All of one patient's photographs lie in another's folder. */
  static Optional<String> sharedFolder(Plan plan, Dice dice) {
    Sitting one = dice.pick(plan.sittings);
    List<Sitting> others =
        plan.sittings.stream().filter(s -> !s.patient.id().equals(one.patient.id())).toList();
    String folder = Developing.folderOf(plan, dice.pick(others).patient);
    List<RollFile> moved = plan.files.stream().filter(file -> file.shot.sitting == one).toList();
    moved.forEach(file -> file.folder = folder);
    return moved.isEmpty()
        ? Optional.empty()
        : Optional.of("those of " + one.visit.key() + " are in " + folder);
  }

  /** A program that rewrote the files left no times in them. */
  static Optional<String> timesGone(Plan plan, Dice dice) {
    List<RollFile> some = plan.files.stream().filter(file -> dice.chance(0.3)).toList();
    for (RollFile file : some) {
      file.takenAt = null;
      file.offset = null;
      file.subsecond = null;
      file.edited = true;
      file.fileTime = plan.date.atTime(18, 0).toInstant(ZoneOffset.UTC);
    }
    return some.isEmpty() ? Optional.empty() : Optional.of(some.size() + " files");
  }

  private static List<RollFile> clinical(Plan plan) {
    return plan.files.stream().filter(file -> file.shot.role == Shot.Role.PHOTO).toList();
  }
}
