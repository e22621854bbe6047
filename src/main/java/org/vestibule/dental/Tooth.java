package org.vestibule.dental;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;

/**
 * One of the 52 teeth: 32 permanent, 20 deciduous. There is one object for each, so teeth may be
 * compared by identity.
 */
public final class Tooth {

  private final int iso;
  private final String universal;
  private final String palmer;
  private final String palmerSymbol;
  private final Arch arch;
  private final Side side;
  private final boolean deciduous;
  private final String type;
  private final Code code;
  private final Set<String> supersededCodes;

  Tooth(CsvTable.Row row) {
    iso = Integer.parseInt(row.get("iso"));
    universal = row.get("universal");
    palmer = row.get("palmer");
    palmerSymbol = row.get("palmer_symbol");
    arch = row.get("arch").equals("upper") ? Arch.UPPER : Arch.LOWER;
    side = row.get("side").equals("right") ? Side.RIGHT : Side.LEFT;
    deciduous = row.get("dentition").equals("deciduous");
    type = row.get("type");
    code = new Code(row.get("scheme"), row.get("code"), row.get("meaning"));
    supersededCodes = Set.copyOf(row.list("superseded"));
  }

  /** All 52, in the order of their ISO 3950 numbers. */
  public static List<Tooth> all() {
    return ToothTable.TEETH;
  }

  /** The tooth with this ISO 3950 number, such as 16 or 55. */
  public static Outcome<Tooth> ofIso(int iso) {
    for (Tooth tooth : all()) {
      if (tooth.iso == iso) {
        return Outcome.done(tooth);
      }
    }
    return Outcome.refused(
        "there is no tooth " + iso + " in ISO 3950",
        "permanent teeth are 11-18, 21-28, 31-38, 41-48; deciduous 51-55, 61-65, 71-75, 81-85");
  }

  /** The tooth a code stands for (PS3.16 CID 4018 and 4019), superseded codes included. */
  public static Optional<Tooth> byCode(Code code) {
    return all().stream()
        .filter(tooth -> code.scheme().equals(tooth.code.scheme()))
        .filter(
            tooth ->
                code.value().equals(tooth.code.value())
                    || tooth.supersededCodes.contains(code.value()))
        .findFirst();
  }

  /** The ISO 3950 number. */
  public int iso() {
    return iso;
  }

  /** The Universal designation without a mark: {@code 3} or {@code A}. */
  public String universal() {
    return universal;
  }

  /** The Palmer designation in letters: {@code UR6} or {@code URE}. */
  public String palmer() {
    return palmer;
  }

  /** The Palmer designation with the quadrant's corner: {@code 6┘}. */
  public String palmerSymbol() {
    return palmerSymbol;
  }

  public Arch arch() {
    return arch;
  }

  public Side side() {
    return side;
  }

  public boolean deciduous() {
    return deciduous;
  }

  /** What kind of tooth it is, such as {@code first molar}. */
  public String type() {
    return type;
  }

  /** Its current code (PS3.16 CID 4018 or 4019). */
  public Code code() {
    return code;
  }

  /** Codes that earlier editions used for it; read, never written. */
  public Set<String> supersededCodes() {
    return supersededCodes;
  }

  /** Such as {@code upper right first molar} or {@code lower left deciduous canine}. */
  public String words() {
    return arch.words() + " " + side.words() + (deciduous ? " deciduous " : " ") + type;
  }

  /** Such as {@code upper right first molar (16)}. */
  public String wordsAndNumber() {
    return words() + " (" + iso + ")";
  }

  /** The tooth's place from the midline, 1 to 8. */
  int fromMidline() {
    return iso % 10;
  }

  /** Its place along the arch from the patient's right to left: -8 to -1, then 1 to 8. */
  int alongArch() {
    return side == Side.RIGHT ? -fromMidline() : fromMidline();
  }

  @Override
  public String toString() {
    return Integer.toString(iso);
  }
}
