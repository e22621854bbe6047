package org.vestibule.simulator;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Lets a sorter sort a day run by run, and holds what it did against the truth. */
public final class Scorer {

  private Scorer() {}

  /**
   * What a sorter did with each file in the end. What was filed or set aside in one run stays so.
   *
   * @throws IllegalStateException if the sorter answers for a file that has not arrived
   */
  public static Map<String, Sorted> play(SimulatedDay day, RollSorter sorter) {
    Map<String, Sorted> done = new HashMap<>();
    for (int run = 1; run <= day.runs(); run++) {
      SeenDay seen = day.seenIn(run);
      Map<String, SeenPhoto> arrived = new HashMap<>();
      seen.photos().forEach(photo -> arrived.put(photo.key(), photo));
      sorter
          .sort(seen, Map.copyOf(done))
          .forEach(
              (key, sorted) -> {
                if (!arrived.containsKey(key)) {
                  throw new IllegalStateException(key + " has not arrived yet");
                }
                if (!(sorted instanceof Sorted.Waits)) {
                  done.putIfAbsent(key, sorted);
                }
              });
    }
    return done;
  }

  /** Counts of one day; a file without an answer waits. */
  public static Score score(SimulatedDay day, Map<String, Sorted> sorted) {
    Score score = Score.NONE;
    for (Map.Entry<String, Subject> file : day.truth().entrySet()) {
      Sorted outcome = sorted.getOrDefault(file.getKey(), new Sorted.Waits(""));
      score = score.plus(one(file.getValue(), outcome));
    }
    long wrong = Math.min(1, score.filedWrong());
    return score.plus(new Score(1, wrong, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
  }

  /** The wrong filings of a day in words, for reports. */
  public static List<String> wrongs(SimulatedDay day, Map<String, Sorted> sorted) {
    List<String> wrongs = new ArrayList<>();
    new TreeMap<>(sorted)
        .forEach(
            (key, outcome) -> {
              Subject truth = day.truth().get(key);
              if (truth != null && one(truth, outcome).filedWrong() > 0) {
                wrongs.add(key + ": " + outcome + ", in truth " + truth);
              }
            });
    return wrongs;
  }

  private static Score one(Subject truth, Sorted outcome) {
    if (truth instanceof Subject.Clinical clinical) {
      return clinical(clinical, outcome);
    }
    boolean card = truth instanceof Subject.OfCard;
    boolean filed = outcome instanceof Sorted.Filed;
    boolean viewed = outcome instanceof Sorted.Filed known && known.view() != null;
    boolean aside = outcome instanceof Sorted.SetAside;
    return new Score(
        0,
        0,
        0,
        0,
        !card && filed ? 1 : 0,
        0,
        0,
        0,
        0,
        card && filed ? 1 : 0,
        card && aside ? 1 : 0,
        0,
        !card && viewed ? 1 : 0);
  }

  private static Score clinical(Subject.Clinical truth, Sorted outcome) {
    if (outcome instanceof Sorted.SetAside) {
      return new Score(0, 0, 1, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0);
    }
    if (!(outcome instanceof Sorted.Filed filed)) {
      return new Score(0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0);
    }
    int viewed = filed.view() == null ? 0 : 1;
    boolean right =
        filed.patient().equals(truth.patient())
            && (filed.visit() == null || filed.visit().equals(truth.visit()));
    if (!right) {
      return new Score(0, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 0, viewed);
    }
    boolean viewWrong = filed.view() != null && !filed.view().equals(truth.view());
    boolean sideWrong =
        !viewWrong
            && ((filed.mirror() != null && filed.mirror() != truth.mirror())
                || (filed.incisors() != null && filed.incisors() != truth.incisors()));
    return new Score(0, 0, 1, 1, 0, viewWrong ? 1 : 0, sideWrong ? 1 : 0, 0, 0, 0, 0, viewed, 0);
  }
}
