package org.vestibule.flow.keeping;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Reentry;
import org.vestibule.flow.Reentry.Found;
import org.vestibule.store.objects.ObjectStore;

/** Enters those orphans again against which nothing speaks, a frame together with its crop. */
final class Reentering {

  /** What became of the orphans. */
  record Result(List<String> entered, List<Orphan> left) {}

  private final Practice practice;
  private final Reentry reentry;
  private final @Nullable ObjectStore copies;
  private final boolean dryRun;
  private final List<String> entered = new ArrayList<>();
  private final List<Orphan> left = new ArrayList<>();

  /**
   * @param copies a backup's objects to compare with; null if there is none
   */
  Reentering(Practice practice, String by, @Nullable ObjectStore copies, boolean dryRun) {
    this.practice = practice;
    this.copies = copies;
    this.reentry = new Reentry(practice, by);
    this.dryRun = dryRun;
  }

  Result enter(List<Orphan> orphans) throws IOException {
    Map<String, Orphan> frames =
        orphans.stream().collect(Collectors.toMap(Orphan::uid, Function.identity()));
    Map<String, List<Orphan>> crops =
        orphans.stream()
            .filter(one -> !one.frame().isEmpty())
            .collect(Collectors.groupingBy(Orphan::frame));
    for (Orphan one : orphans) {
      if (!one.frame().isEmpty()) {
        if (!frames.containsKey(one.frame())) {
          left.add(one.isUndoubted() ? one.notEntered("its whole frame is not there") : one);
        }
        continue;
      }
      enter(one, crops.getOrDefault(one.uid(), List.of()));
    }
    return new Result(List.copyOf(entered), List.copyOf(left));
  }

  private void enter(Orphan frame, List<Orphan> crops) throws IOException {
    boolean undoubted = frame.isUndoubted() && crops.stream().allMatch(Orphan::isUndoubted);
    if (!undoubted || crops.size() > 1) {
      left.add(frame.isUndoubted() ? frame.notEntered("something speaks against its crop") : frame);
      for (Orphan crop : crops) {
        left.add(crop.isUndoubted() ? crop.notEntered("something speaks against its frame") : crop);
      }
      return;
    }
    Found frameFound = found(frame);
    Found cropFound = crops.isEmpty() ? null : found(crops.get(0));
    Outcome<String> id =
        differs(frameFound) || (cropFound != null && differs(cropFound))
            ? Outcome.refused("its copy in the backup has other bytes", "look at both")
            : reentry.enter(frameFound, cropFound, dryRun);
    if (id instanceof Done<String> done) {
      entered.add(done.value() + " (object " + frame.uid() + ")");
      return;
    }
    String why = ((Refused<String>) id).reason();
    left.add(frame.notEntered(why));
    crops.forEach(crop -> left.add(crop.notEntered(why)));
  }

  private boolean differs(Found object) throws IOException {
    return copies != null
        && copies
            .get(object.uid())
            .filter(copy -> !Arrays.equals(copy, object.bytes()))
            .isPresent();
  }

  private Found found(Orphan orphan) throws IOException {
    byte @Nullable [] bytes = practice.store().objects().get(orphan.uid()).orElse(null);
    if (bytes == null) {
      throw new IOException("an object is gone that was read a moment ago");
    }
    return new Found(orphan.uid(), bytes);
  }
}
