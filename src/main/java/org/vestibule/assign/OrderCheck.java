package org.vestibule.assign;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.intake.FileNames;

/**
 * Whether the order of a stretch has two witnesses, the time inside the files and their names, and
 * whether it is whole. Names count, or tell the time. A name that tells the time can't show that a
 * file is missing.
 */
final class OrderCheck {

  /** What was found: whether names count here, how many numbers are missing, what is wrong. */
  record Found(boolean counted, int missing, List<WaitReason> problems) {
    Found {
      problems = List.copyOf(problems);
    }
  }

  private static final int MOST_LOOKED_AT = 10_000;
  private static final String LOOK = "look whose photographs these are and file them by hand";

  private final DeviceRoll roll;
  private final Set<String> otherFiles;
  private final List<Member> originals;
  private final List<WaitReason> problems = new ArrayList<>();

  OrderCheck(DeviceRoll roll, List<Member> members, Set<String> otherFiles) {
    this.roll = roll;
    this.otherFiles = otherFiles;
    this.originals = members.stream().filter(each -> !each.isCopy()).toList();
  }

  Found check() {
    if (!roll.device().isKnown()) {
      problem("the files don't say which phone took them", LOOK);
    }
    long counting = originals.stream().filter(each -> each.number() != null).count();
    if (counting == 0) {
      namesTellTheTime();
      return new Found(false, 0, problems);
    }
    FileNumber first = originals.get(0).number();
    if (counting < originals.size()
        || first == null
        || !originals.stream().allMatch(each -> sameSeries(first, each.number()))) {
      problem(
          "file names of two kinds run through each other, so two phones may share the folder",
          "give each phone a folder of its own; " + LOOK);
      return new Found(false, 0, problems);
    }
    return new Found(true, missing(first.series()), problems);
  }

  private static boolean sameSeries(FileNumber first, @Nullable FileNumber other) {
    return other != null && first.sameSeries(other);
  }

  private int missing(String series) {
    Set<Integer> filled = filled(series);
    int missing = 0;
    for (int at = 1; at < originals.size(); at++) {
      FileNumber before = originals.get(at - 1).number();
      FileNumber after = originals.get(at).number();
      if (before == null || after == null || !before.mayComeBefore(after)) {
        problem(
            "the file numbers don't run in the order of the times, so two phones of one model may"
                + " share the folder, or a clock or a file's time was changed",
            "give each phone a folder of its own and check its clock; " + LOOK);
        return 0;
      }
      int between = before.between(after);
      if (between > MOST_LOOKED_AT) {
        return between;
      }
      for (int step = 1; step <= between; step++) {
        missing += filled.contains(before.after(step, after)) ? 0 : 1;
      }
    }
    return missing;
  }

  /**
   * Numbers used up by files that have no place in the order: videos, copies, files without time.
   */
  private Set<Integer> filled(String series) {
    Set<Integer> filled = new HashSet<>();
    roll.timeless().forEach(each -> fill(filled, series, each.number()));
    roll.ordered().stream()
        .filter(Member::isCopy)
        .forEach(each -> fill(filled, series, each.number()));
    otherFiles.stream()
        .filter(name -> FileNames.key(FileNames.folder(name)).equals(roll.device().folder()))
        .forEach(name -> fill(filled, series, FileNumber.of(name).orElse(null)));
    return filled;
  }

  private static void fill(Set<Integer> filled, String series, @Nullable FileNumber number) {
    if (number != null && number.series().equals(series)) {
      filled.add(number.value());
    }
  }

  private void namesTellTheTime() {
    Set<Long> quarters = new HashSet<>();
    for (Member member : originals) {
      LocalDateTime taken = member.seen().facts().takenAt();
      Optional<LocalDateTime> named = NameClock.of(member.seen().name());
      if (named.isEmpty() || taken == null) {
        problem(
            "the file names neither count nor tell the time, so a clock alone says in which order"
                + " they were taken",
            "let the phone send its photographs under their own names; " + LOOK);
        return;
      }
      quarters.add(NameClock.quartersAhead(named.get(), taken).orElse(Long.MIN_VALUE));
    }
    if (quarters.size() != 1 || quarters.contains(Long.MIN_VALUE)) {
      problem(
          "the time in a file's name is not the time inside the file, so one of them was changed",
          LOOK);
    }
  }

  private void problem(String sentence, String advice) {
    problems.add(new WaitReason(Kind.CARD_ORDER, sentence, advice));
  }
}
