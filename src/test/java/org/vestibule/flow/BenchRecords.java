package org.vestibule.flow;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.IndexRecord;

/**
 * Descriptions of invented photographs, each always the same for its number, and questions about
 * them: ten years of visits with twelve photographs, five visits to a patient.
 */
public final class BenchRecords {

  private static final int PER_VISIT = 12;
  private static final int PER_PATIENT = 60;
  private static final int DAYS = 3650;
  private static final LocalDate FIRST = LocalDate.of(2016, 3, 12);
  private static final List<String> ONSETS =
      List.of("Bram", "Tall", "Wil", "Hart", "Ems", "Lin", "Orm", "Pel", "Quar", "Rud", "Sen");
  private static final List<String> ENDS =
      List.of("grass", "water", "low", "field", "by", "den", "wick", "ford", "mere", "stead");
  private static final List<String> GIVEN =
      List.of("Orla", "Ned", "Ada", "Bo", "Ines", "Tove", "Milo", "Runa", "Per", "Sol");
  private static final List<String> STAGES = List.of("before", "prepared", "after", "follow-up");
  private static final List<String> USUAL =
      List.of(
          "frontal",
          "right-buccal",
          "left-buccal",
          "upper-occlusal",
          "lower-occlusal",
          "tooth-buccal-right",
          "upper-tooth-occlusal");

  private final List<View> views;
  private final int count;

  /**
   * So many photographs.
   *
   * @param count how many
   */
  public BenchRecords(int count) {
    this.count = count;
    ViewCatalogue catalogue = ViewCatalogue.standard();
    this.views = USUAL.stream().map(key -> catalogue.byKey(key).orElseThrow()).toList();
  }

  /** The photograph of a number from 0. */
  public IndexRecord record(int number) {
    Random random = new Random(number);
    String hash = ContentHash.of(("photo " + number).getBytes(StandardCharsets.UTF_8)).hex();
    int visit = number / PER_VISIT;
    int patient = patient(number);
    LocalDate day = FIRST.plusDays(new Random(visit).nextInt(DAYS));
    LocalDateTime taken = day.atTime(8, 0).plusSeconds(random.nextInt(36_000));
    IndexRecord.Who who =
        new IndexRecord.Who(
            number(patient),
            "MILL",
            GIVEN.get(patient % GIVEN.size()) + " " + family(patient),
            visit % 3 == 0 ? "Ida " + family(visit % 40) : "",
            "B. Wren",
            "A" + visit,
            "V" + visit,
            day);
    String note = number % 10 == 0 ? "composite " + ENDS.get(random.nextInt(ENDS.size())) : "";
    return new IndexRecord(
        hash,
        hash.substring(0, 10),
        true,
        "2.25." + new BigInteger(hash.substring(0, 32), 16),
        taken,
        who,
        shows(views.get(random.nextInt(views.size())), random),
        "Lumo P1",
        note.isEmpty() ? "" : "filling",
        note);
  }

  private static IndexRecord.Shows shows(View view, Random random) {
    List<Integer> teeth = new ArrayList<>();
    if (random.nextInt(5) < 2) {
      teeth.add(10 * (1 + random.nextInt(4)) + 1 + random.nextInt(8));
    }
    boolean implant = !teeth.isEmpty() && random.nextInt(10) == 0;
    return new IndexRecord.Shows(
        view.key(),
        view.name(),
        teeth.isEmpty() ? "" : "tooth " + teeth.get(0),
        teeth,
        implant ? List.of(teeth.get(0) + " implant") : List.of(),
        List.of(),
        InFrame.of(view),
        view.occlusal() ? "as-shot" : "none",
        random.nextBoolean() ? STAGES.get(random.nextInt(STAGES.size())) : "",
        List.of());
  }

  private static int patient(int number) {
    return number / PER_PATIENT;
  }

  private static String number(int patient) {
    return "P" + (100_000 + patient);
  }

  /** Some family names are common, as they are. */
  private static String family(int patient) {
    int at = patient % 7 == 0 ? patient % 3 : patient;
    return ONSETS.get(at % ONSETS.size())
        + ENDS.get(at / ONSETS.size() % ENDS.size())
        + (at / 110 % 50 == 0 ? "" : "-" + ONSETS.get(at / 110 % ONSETS.size()));
  }

  /** A question in words, of a kind from 0 to {@link #KINDS} - 1. */
  public String question(int kind, Random random) {
    int someone = patient(random.nextInt(count));
    int tooth = 10 * (1 + random.nextInt(4)) + 1 + random.nextInt(8);
    String stage = STAGES.get(random.nextInt(STAGES.size()));
    int year = 2016 + random.nextInt(10);
    return switch (kind) {
      case 0 -> "patient number " + number(someone);
      case 1 -> family(someone) + ", " + stage;
      case 2 -> tooth + " occlusal";
      case 3 -> "right buccal, " + stage;
      case 4 -> "upper occlusal, since " + year + "-06-01";
      case 5 -> tooth + ", " + stage + ", " + year;
      case 6 -> "frontal, patient " + family(someone).split("-", -1)[0].toLowerCase(Locale.ROOT);
      default -> "implant, mirror, " + year;
    };
  }

  /** How many kinds of questions there are. */
  public static final int KINDS = 8;
}
