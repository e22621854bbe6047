package org.vestibule.card;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.CardSighting.Refused;

/** Reads a thousand and more photographs of cards and prints what was read, missed and wrong. */
final class CardMeasure {

  private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

  private final CardPhotos photos;
  private int wrong;

  private CardMeasure(int width) {
    this.photos = new CardPhotos(width);
  }

  /** Arguments: photographs of each fault, width in samples, folder for what was missed or "-". */
  public static void main(String[] args) throws IOException {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    int width = args.length > 1 ? Integer.parseInt(args[1]) : 4032;
    Path missed = args.length > 2 && !args[2].equals("-") ? Path.of(args[2]) : null;
    List<String> faults = args.length > 3 ? List.of(args[3].split(",", -1)) : List.of();
    CardMeasure measure = new CardMeasure(width);
    System.out.println("fault          photos  read  refused  no card  wrong  CPU ms");
    for (CardFault fault : CardFault.values()) {
      if (faults.isEmpty() || faults.contains(fault.name())) {
        measure.fault(fault, count, missed);
      }
    }
    System.out.println(measure.wrong + " wrong");
    System.exit(measure.wrong == 0 ? 0 : 1);
  }

  private void fault(CardFault fault, int count, @org.jspecify.annotations.Nullable Path missed)
      throws IOException {
    int read = 0;
    int refused = 0;
    int none = 0;
    int wrongHere = 0;
    long nanos = 0;
    TreeMap<String, Integer> reasons = new TreeMap<>();
    for (int seed = 1; seed <= count; seed++) {
      CardPhotos.Photo photo = photos.photo(fault, seed);
      if (seed == 1) {
        CardReader.read(photo.jpeg());
      }
      long start = CPU.getCurrentThreadCpuTime();
      CardSighting seen = CardReader.read(photo.jpeg()).orThrow();
      nanos += CPU.getCurrentThreadCpuTime() - start;
      boolean right;
      if (seen instanceof OneCard card) {
        read++;
        right = fault.readable() && photo.cards().contains(card.card());
        wrongHere += right ? 0 : 1;
      } else if (seen instanceof Refused why) {
        refused++;
        reasons.merge(why.reason(), 1, Integer::sum);
        right = !fault.readable();
        wrongHere += fault == CardFault.NO_CARD || fault == CardFault.FOREIGN ? 1 : 0;
      } else {
        none++;
        right = fault == CardFault.NO_CARD || fault == CardFault.FOREIGN;
      }
      if (!right && missed != null) {
        String what =
            seen instanceof NoCard ? "none" : seen instanceof OneCard ? "read" : "refused";
        Files.write(missed.resolve(fault + "-" + seed + "-" + what + ".jpg"), photo.jpeg());
      }
    }
    wrong += wrongHere;
    System.out.printf(
        Locale.ROOT,
        "%-14s %6d %5d %8d %8d %6d %7.1f%n",
        fault,
        count,
        read,
        refused,
        none,
        wrongHere,
        nanos / 1e6 / count);
    reasons.forEach((reason, times) -> System.out.println("    " + times + " x " + reason));
  }
}
