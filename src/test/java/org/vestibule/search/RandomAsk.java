package org.vestibule.search;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexTerm;

/**
 * A question at random and its meaning, spelled out without the program: which photographs it asks
 * for, and how close each is.
 *
 * @param words parts of the question, in order
 */
record RandomAsk(
    List<String> words,
    List<Integer> teeth,
    @Nullable String view,
    List<String> stages,
    @Nullable String mirror,
    @Nullable String name,
    @Nullable Boolean filed,
    @Nullable LocalDate from,
    @Nullable LocalDate to) {

  static final List<String> NAMES = List.of("ada", "bo", "mill", "huber", "meier");
  static final List<Integer> TEETH = List.of(11, 13, 16, 17, 21, 24, 26, 31, 36, 37, 43, 46, 47);
  static final List<String> STAGES = List.of("before", "prepared", "after", "follow-up");
  private static final List<String> VIEWS =
      List.of("view upper occlusal", "view right buccal", "view lips and soft tissue");
  private static final List<String> VIEW_KEYS = List.of("upper-occlusal", "right-buccal", "lips");

  static RandomAsk of(Random random) {
    List<String> words = new ArrayList<>();
    List<Integer> teeth = new ArrayList<>();
    for (int count = random.nextInt(3); count > 0; count--) {
      teeth.add(pick(TEETH, random));
    }
    teeth.forEach(tooth -> words.add(tooth.toString()));
    int view = random.nextInt(9);
    if (view < VIEWS.size()) {
      words.add(VIEWS.get(view));
    }
    List<String> stages = new ArrayList<>();
    for (int count = random.nextInt(6) - 3; count > 0; count--) {
      stages.add(pick(STAGES, random));
    }
    words.addAll(stages);
    int mirror = random.nextInt(6);
    if (mirror < 2) {
      words.add(mirror == 0 ? "mirror" : "direct");
    }
    String name = random.nextInt(4) == 0 ? pick(NAMES, random) : null;
    if (name != null) {
      words.add(name);
    }
    int filed = random.nextInt(8);
    if (filed < 2) {
      words.add(filed == 0 ? "filed" : "waiting");
    }
    LocalDate from = random.nextInt(4) == 0 ? day(random) : null;
    LocalDate to = random.nextInt(4) == 0 ? (from == null ? day(random) : from.plusDays(60)) : null;
    if (from != null) {
      words.add("since " + from);
    }
    if (to != null) {
      words.add("until " + to);
    }
    if (words.isEmpty()) {
      return of(random);
    }
    Collections.shuffle(words, random);
    return new RandomAsk(
        List.copyOf(words),
        List.copyOf(teeth),
        view < VIEWS.size() ? VIEW_KEYS.get(view) : null,
        List.copyOf(stages),
        mirror == 0 ? "mirror" : mirror == 1 ? "direct" : null,
        name,
        filed < 2 ? filed == 0 : null,
        from,
        to);
  }

  private static LocalDate day(Random random) {
    return LocalDate.of(2025, 9, 1).plusDays(random.nextInt(200));
  }

  static <T> T pick(List<T> from, Random random) {
    return from.get(random.nextInt(from.size()));
  }

  /** Commas keep phrases apart, whatever their order. */
  String text() {
    return String.join(", ", words);
  }

  /** The same put together from parts, without reading words. */
  Question question() {
    Parts parts = new Parts();
    if (!teeth.isEmpty()) {
      parts.say(Teeth.of(teeth.stream().map(iso -> Tooth.ofIso(iso).orThrow()).toList())).orThrow();
    }
    if (view != null) {
      parts.say(Part.of(IndexField.VIEW, view, view)).orThrow();
    }
    for (String stage : stages) {
      parts.say(Part.of(IndexField.STAGE, stage, stage)).orThrow();
    }
    if (mirror != null) {
      parts.say(FixedWords.find(mirror).orElseThrow()).orThrow();
    }
    if (name != null) {
      IndexTerm patient = new IndexTerm(IndexField.NAME, name);
      IndexTerm referrer = new IndexTerm(IndexField.REFERRER, name);
      parts.say(new Part(IndexField.TEXT, new AnyOf(List.of(patient, referrer)), name)).orThrow();
    }
    if (filed != null) {
      parts.say(FixedWords.find(filed ? "filed" : "waiting").orElseThrow()).orThrow();
    }
    parts.days(from, to).orThrow();
    return parts.question().orThrow();
  }

  /** How close a photograph is, from 0; below 0 if it is no answer. */
  int closeness(IndexRecord photo) {
    return meets(photo) ? (teeth.isEmpty() ? 0 : closest(photo)) : -1;
  }

  private int closest(IndexRecord photo) {
    IndexRecord.Shows s = photo.shows();
    List<List<Integer>> levels =
        List.of(
            s.teeth(),
            s.usual().segment(),
            s.usual().quadrant(),
            s.usual().arch(),
            s.usual().mouth());
    for (int level = 0; level < levels.size(); level++) {
      if (!Collections.disjoint(levels.get(level), teeth)) {
        return level;
      }
    }
    return -1;
  }

  private boolean meets(IndexRecord photo) {
    LocalDate day = photo.day();
    String shown = photo.shows().mirror();
    boolean inMirror = shown.equals("as-shot") || shown.equals("corrected");
    return (view == null || photo.shows().viewKey().equals(view))
        && (stages.isEmpty() || stages.contains(photo.shows().stage()))
        && (mirror == null || (mirror.equals("mirror") ? inMirror : shown.equals("none")))
        && (name == null || (" " + named(photo) + " ").contains(" " + name + " "))
        && (filed == null || photo.filed() == filed)
        && (from == null || (day != null && !day.isBefore(from)))
        && (to == null || (day != null && !day.isAfter(to)));
  }

  private static String named(IndexRecord photo) {
    return (photo.who().name() + " " + photo.who().referrer())
        .toLowerCase(Locale.ROOT)
        .replace('-', ' ');
  }
}
