package org.vestibule.assign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;

/**
 * The practice's visits.
 *
 * @param visits in the order of the list, each key once
 * @param disputed visits of the list that contradict the record; not among the visits
 * @param warnings recoverable oddities, each a sentence without patient data
 * @param plans what the list plans, by visit key in lower case
 */
public record VisitList(
    List<Visit> visits,
    List<Disputed> disputed,
    List<String> warnings,
    Map<String, VisitPlan> plans) {

  /** No visit is known. */
  public static final VisitList EMPTY = new VisitList(List.of(), List.of());

  private static final String LIST = "the visit list";

  public VisitList {
    visits = List.copyOf(visits);
    disputed = List.copyOf(disputed);
    warnings = List.copyOf(warnings);
    plans = Map.copyOf(plans);
  }

  /** A list that no record contradicts and that plans nothing. */
  public VisitList(List<Visit> visits, List<String> warnings) {
    this(visits, List.of(), warnings, Map.of());
  }

  /** What the list plans for a visit; nothing for one that is only on record. */
  public VisitPlan plan(Visit visit) {
    return plans.getOrDefault(visit.key().toLowerCase(Locale.ROOT), VisitPlan.NONE);
  }

  /**
   * This list together with the visits that are on record. Where both know a visit the list counts,
   * except that a patient's details are never changed by a list alone: what contradicts the record
   * is disputed.
   *
   * @param recorded each with its patient as recorded
   */
  public VisitList with(List<Visit> recorded) {
    List<Visit> sound = new ArrayList<>();
    List<Disputed> against = new ArrayList<>();
    Set<String> listed = new HashSet<>();
    for (Visit visit : visits) {
      listed.add(visit.key().toLowerCase(Locale.ROOT));
      Disputed.of(visit, recorded)
          .ifPresentOrElse(against::add, () -> sound.add(asRecorded(visit, recorded)));
    }
    recorded.stream()
        .filter(visit -> !listed.contains(visit.key().toLowerCase(Locale.ROOT)))
        .forEach(sound::add);
    sound.sort(Comparator.comparing(Visit::start).thenComparing(Visit::key));
    return new VisitList(sound, against, warnings, plans);
  }

  private static Visit asRecorded(Visit listed, List<Visit> recorded) {
    return recorded.stream()
        .map(Visit::patient)
        .filter(patient -> VisitsTogether.sameNumber(patient, listed.patient()))
        .findFirst()
        .map(patient -> listed.of(patient.fuller(listed.patient())))
        .orElse(listed);
  }

  /** What is against the visit of this key; capitals don't matter. */
  Optional<Disputed> dispute(String key) {
    return disputed.stream()
        .filter(against -> against.visit().key().equalsIgnoreCase(key.strip()))
        .findFirst();
  }

  /** What is against the patient of this number, whose visits can't be told apart by it then. */
  Optional<Disputed> disputeOfPatient(String id) {
    return disputed.stream()
        .filter(against -> against.visit().patient().id().equalsIgnoreCase(id.strip()))
        .findFirst();
  }

  /**
   * Reads a list from a file; a file that isn't there is an empty list.
   *
   * @param issuer who issues the patients' numbers where the list doesn't say; maybe empty
   */
  public static Outcome<VisitList> read(Path file, String issuer) {
    if (!Files.exists(file)) {
      return Outcome.done(EMPTY);
    }
    try {
      return parse(Files.readAllBytes(file), LIST, issuer);
    } catch (IOException e) {
      return Outcome.refused(
          "the visit list can't be read (" + e.getClass().getSimpleName() + ")",
          "check that no other program holds it and that it may be read");
    }
  }

  /**
   * Reads a list.
   *
   * @param name what messages call it
   */
  public static Outcome<VisitList> parse(byte[] bytes, String name, String issuer) {
    try {
      TextTable table = TextTable.read(bytes, name, VisitReader.COLUMNS);
      NumberDamage.refuse(table.rows(), "patient id");
      NumberDamage.refuseExponents(table.rows(), "visit");
      NumberDamage.refuseExponents(table.rows(), "accession number");
      List<String> warnings = new ArrayList<>(table.warnings());
      VisitsTogether visits = new VisitsTogether(warnings);
      Map<String, VisitPlan> plans = new HashMap<>();
      for (TableRow row : table.rows()) {
        VisitReader reader = new VisitReader(row, issuer, warnings);
        Visit visit = reader.read();
        visits.add(row, visit);
        plans.put(visit.key().toLowerCase(Locale.ROOT), reader.plan());
      }
      return Outcome.done(new VisitList(visits.all(), List.of(), warnings, plans));
    } catch (Refusal refusal) {
      return refusal.outcome();
    }
  }

  /**
   * Adds a visit to the list in a file, making the file if it isn't there. The list must be sound
   * before and after; otherwise nothing is changed.
   *
   * @return the list with the visit
   */
  public static Outcome<VisitList> append(Path file, VisitWords words, String issuer) {
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    try {
      byte[] list = Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
      byte[] longer = VisitAppender.append(list, words);
      Outcome<VisitList> after = parse(longer, LIST, issuer);
      if (after instanceof Outcome.Done<VisitList>) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
          Files.createDirectories(folder);
        }
        Files.write(beside, longer);
        Files.move(
            beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
      }
      return after;
    } catch (Refusal refusal) {
      return refusal.outcome();
    } catch (IOException e) {
      return Outcome.refused(
          "the visit list can't be written (" + e.getClass().getSimpleName() + ")",
          "check that no other program holds it and that the disk is not full");
    }
  }

  /** The visit of this key; capitals don't matter. */
  public Optional<Visit> byKey(String key) {
    return visits.stream().filter(visit -> visit.key().equalsIgnoreCase(key.strip())).findFirst();
  }

  /** True if there is a visit of this key, even a disputed one; capitals don't matter. */
  public boolean knows(String key) {
    return byKey(key).isPresent() || dispute(key).isPresent();
  }

  /** The visits of the patient of this number; capitals don't matter. */
  public List<Visit> ofPatient(String id) {
    return visits.stream()
        .filter(visit -> visit.patient().id().equalsIgnoreCase(id.strip()))
        .toList();
  }

  /** True if a patient's number is this one but for zeros at its beginning. */
  boolean knowsWithZeros(String id) {
    String bare = withoutZeros(id.strip());
    return visits.stream()
        .map(visit -> visit.patient().id())
        .anyMatch(other -> !other.equals(id.strip()) && withoutZeros(other).equals(bare));
  }

  private static String withoutZeros(String id) {
    return id.replaceFirst("^0+", "");
  }

  /** True if another patient has the same name. */
  public boolean hasNamesake(Patient patient) {
    return visits.stream()
        .map(Visit::patient)
        .anyMatch(
            other ->
                !VisitsTogether.sameNumber(other, patient)
                    && VisitsTogether.sameName(other, patient));
  }
}
