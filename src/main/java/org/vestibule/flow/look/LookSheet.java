package org.vestibule.flow.look;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.FileNames;
import org.vestibule.intake.Hidden;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;

/** Makes the sheet of a folder that was looked at. */
final class LookSheet {

  private final Roll roll;
  private final List<Sitting> sittings;
  private final Map<Photo, List<String>> remarks = new HashMap<>();

  private LookSheet(Roll roll, List<Sitting> sittings) {
    this.roll = roll;
    this.sittings = sittings;
  }

  /**
   * The sheet.
   *
   * @param folderName last part of the folder's name
   * @param roll what the folder holds
   * @param sittings its photographs in groups
   * @param today the day that stands on it
   */
  static Sheet of(String folderName, Roll roll, List<Sitting> sittings, LocalDate today) {
    LookSheet sheet = new LookSheet(roll, sittings);
    sheet.duplicates();
    sheet.sameShots();
    return new Sheet(
        "What is in “" + FileNames.shown(folderName) + "”",
        "Looked at on "
            + Say.day(today)
            + ". Nothing in the folder was changed. Photographs of one camera stand together as"
            + " long as the pauses between them are short; whose they are, nobody has said yet.",
        Sheet.CAUTION,
        sheet.tallies(),
        "What hides inside these files",
        sheet.glossary(),
        sheet.sections(),
        "Made on this computer from the files alone. The manifest beside this page lists the same"
            + " photographs: complete it, and they can be filed.");
  }

  private void duplicates() {
    Map<ContentHash, Photo> byHash = new HashMap<>();
    roll.photos().forEach(photo -> byHash.put(photo.arrival().hash(), photo));
    for (LeftOut left : roll.leftOut()) {
      Photo photo = left.hash() == null ? null : byHash.get(left.hash());
      if (photo != null) {
        remark(photo, "The same file lies here too: " + left.shownName() + ".");
      }
    }
  }

  private void sameShots() {
    for (List<Photo> group : roll.sameShot()) {
      for (Photo photo : group) {
        for (Photo other : group) {
          if (!other.equals(photo)) {
            remark(
                photo,
                "Same shot as "
                    + other.arrival().shownName()
                    + ", one of them perhaps an edited copy: file one of the two.");
          }
        }
      }
    }
  }

  private void remark(Photo photo, String words) {
    remarks.computeIfAbsent(photo, key -> new ArrayList<>()).add(words);
  }

  private List<Tally> tallies() {
    List<Tally> tallies = new ArrayList<>();
    tally(tallies, roll.photos().size(), "photograph", "photographs", Tone.PLAIN);
    tally(tallies, sittings.size(), "sitting", "sittings", Tone.PLAIN);
    care(tallies, count(photo -> photo.hides(Hidden.Kind.POSITION)), "carry their position");
    care(tallies, count(photo -> photo.facts().edited()), "perhaps edited");
    care(tallies, count(PhotoCard::tooMuchZoom), "with digital zoom above 2×");
    care(tallies, left(LeftOutKind::needsPerson).size(), "not taken, see why");
    return tallies;
  }

  private static void tally(List<Tally> tallies, int number, String one, String many, Tone tone) {
    tallies.add(new Tally(Integer.toString(number), number == 1 ? one : many, tone));
  }

  private static void care(List<Tally> tallies, int number, String words) {
    if (number > 0) {
      tally(tallies, number, words, words, Tone.CARE);
    }
  }

  private int count(Predicate<Photo> test) {
    return (int) roll.photos().stream().filter(test).count();
  }

  private List<LeftOut> left(Predicate<LeftOutKind> test) {
    return roll.leftOut().stream().filter(file -> test.test(file.kind())).toList();
  }

  /** Each kind of hidden thing once, with the number of photographs that carry it. */
  private List<Fact> glossary() {
    Map<Hidden, Integer> counts = new LinkedHashMap<>();
    for (Hidden.Kind kind : Hidden.Kind.values()) {
      for (Photo photo : roll.photos()) {
        photo.hidden().stream()
            .filter(hidden -> hidden.kind() == kind)
            .forEach(hidden -> counts.merge(hidden, 1, Integer::sum));
      }
    }
    return counts.entrySet().stream()
        .map(
            entry ->
                new Fact(
                    Say.sentence(entry.getKey().kind().words()).replaceFirst("\\.$", ""),
                    Say.sentence(entry.getKey().sentence())
                        + " In "
                        + entry.getValue()
                        + " of "
                        + Say.count(roll.photos().size(), "photograph")
                        + "."))
        .toList();
  }

  private List<SheetSection> sections() {
    List<SheetSection> sections = new ArrayList<>();
    lines(
        sections,
        "Not taken: please look",
        "These may be clinical photographs, and the program can't use them as they are.",
        left(LeftOutKind::needsPerson));
    sittings.forEach(sitting -> sections.add(section(sitting)));
    lines(
        sections,
        "Not here yet",
        "Copies and downloads that seem to be under way; look again later.",
        left(LeftOutKind::comesBack));
    lines(
        sections,
        "Left aside",
        "Nothing needs to be done about these.",
        left(kind -> !kind.needsPerson() && !kind.comesBack()));
    return sections;
  }

  private SheetSection section(Sitting sitting) {
    LocalDateTime start = sitting.start();
    LocalDateTime end = sitting.end();
    String number = Say.count(sitting.photos().size(), "photograph");
    List<Card> cards =
        sitting.photos().stream()
            .map(photo -> PhotoCard.of(photo, remarks.getOrDefault(photo, List.of())))
            .toList();
    if (start == null || end == null) {
      return new SheetSection(
          "No time stated",
          number + " whose files don't say when they were taken, in the order of their names.",
          cards);
    }
    return new SheetSection(
        Say.stretch(start, end),
        number + (sitting.camera() == null ? "" : ", " + sitting.camera()),
        cards);
  }

  private static void lines(
      List<SheetSection> sections, String heading, String lead, List<LeftOut> files) {
    if (files.isEmpty()) {
      return;
    }
    sections.add(
        new SheetSection(
            heading,
            lead,
            files.stream()
                .map(
                    file ->
                        new Card(
                            file.name().isEmpty() ? "the folder itself" : file.name(),
                            null,
                            List.of(),
                            List.of(),
                            List.of(
                                Say.sentence(file.reason() + taken(file) + "; " + file.advice()))))
                .toList()));
  }

  /** The time of a picture that can't be taken, where it could be read. */
  private static String taken(LeftOut file) {
    LocalDateTime time = file.facts() == null ? null : file.facts().takenAt();
    return time == null
        ? ""
        : "; it was taken on " + Say.day(time.toLocalDate()) + " at " + Say.time(time);
  }
}
