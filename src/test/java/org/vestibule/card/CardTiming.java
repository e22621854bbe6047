package org.vestibule.card;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.vestibule.base.Outcome.Done;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.jpeg.Brightness;

/** Times the look at photographs that are not cards, and says of which it thinks otherwise. */
final class CardTiming {

  private static final int ROUNDS = 5;
  private static final int WARMING = 2;
  private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

  private CardTiming() {}

  /** Arguments: "draw" FOLDER COUNT makes photographs; "read" FOLDER reads all in a folder. */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[1]);
    if (args[0].equals("draw")) {
      CardPhotos photos = new CardPhotos(4032);
      for (int seed = 1; seed <= Integer.parseInt(args[2]); seed++) {
        byte[] jpeg = photos.photo(CardFault.NO_CARD, 1000 + seed).jpeg();
        Files.write(folder.resolve("photo-" + seed + ".jpg"), jpeg);
      }
      return;
    }
    List<Path> files;
    try (Stream<Path> walk = Files.walk(folder)) {
      files = walk.filter(file -> file.toString().endsWith(".jpg")).sorted().toList();
    }
    int taken = 0;
    int others = 0;
    double all = 0;
    double decoding = 0;
    for (Path file : files) {
      byte[] jpeg = Files.readAllBytes(file);
      if (!(CardReader.read(jpeg) instanceof Done<CardSighting> seen)) {
        continue;
      }
      taken++;
      if (!(seen.value() instanceof NoCard)) {
        others++;
        System.out.println(file.getFileName() + ": " + seen.value());
      }
      for (int round = 0; round < ROUNDS; round++) {
        long start = CPU.getCurrentThreadCpuTime();
        CardReader.read(jpeg);
        long middle = CPU.getCurrentThreadCpuTime();
        Brightness.use(jpeg, Brightness::blocksWide);
        if (round >= WARMING) {
          all += (middle - start) / 1e6 / (ROUNDS - WARMING);
          decoding += (CPU.getCurrentThreadCpuTime() - middle) / 1e6 / (ROUNDS - WARMING);
        }
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%d of %d files read, %d not \"no card\"; CPU ms per file: %.1f, of which decoding %.1f%n",
        taken,
        files.size(),
        others,
        all / taken,
        decoding / taken);
  }
}
