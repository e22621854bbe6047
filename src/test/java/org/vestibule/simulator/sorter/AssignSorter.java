package org.vestibule.simulator.sorter;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.vestibule.assign.AssignSources;
import org.vestibule.assign.Assigner;
import org.vestibule.assign.Assignment;
import org.vestibule.assign.Decision;
import org.vestibule.assign.IssuedCard;
import org.vestibule.assign.PhotoFact;
import org.vestibule.assign.RollAssigner;
import org.vestibule.assign.RollCards;
import org.vestibule.assign.Seen;
import org.vestibule.assign.SortingRules;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.assign.WaitReason;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.simulator.RollSorter;
import org.vestibule.simulator.SeenDay;
import org.vestibule.simulator.SeenPhoto;
import org.vestibule.simulator.SimulatedVisit;
import org.vestibule.simulator.Sorted;

/**
 * Sorts simulated days with the program's own rules, as an {@code ingest} does.
 *
 * <p>A photograph whose visit is settled counts as filed, also if it waits for its view: then the
 * program leaves nothing to a person but the view, and a wrong patient would most likely stay. It
 * is filed without a view then. In every second day what earlier runs filed has gone from the inbox
 * and is known from the record alone.
 */
public final class AssignSorter implements RollSorter {

  /** What may be left to say once whose photograph it is has been settled. */
  private static final Set<Kind> ABOUT_THE_VIEW =
      EnumSet.of(Kind.NO_VIEW, Kind.NO_MIRROR, Kind.ORIENTATION);

  private final SortingRules rules;

  /** With nothing loosened. */
  public AssignSorter() {
    this(SortingRules.STRICT);
  }

  AssignSorter(SortingRules rules) {
    this.rules = rules;
  }

  @Override
  public Map<String, Sorted> sort(SeenDay day, Map<String, Sorted> before) {
    VisitList visits = SimulatedLists.visits(day);
    Map<ContentHash, String> filed = filed(day, before);
    boolean cleared = day.date().toEpochDay() % 2 == 0;
    List<SeenPhoto> here =
        day.photos().stream()
            .filter(photo -> !cleared || !before.containsKey(photo.key()))
            .toList();
    Map<ContentHash, List<String>> names = new HashMap<>();
    Roll roll = roll(here, names);
    RollCards cards = cards(day, visits, roll, filed);
    RollAssigner assigner = new Assigner(sources(day, visits)).forRoll(roll, cards);
    Map<String, Sorted> sorted = new HashMap<>();
    for (Photo photo : roll.photos()) {
      Sorted answer = sorted(assigner.assign(photo, List.of()), visits);
      names.getOrDefault(photo.arrival().hash(), List.of()).forEach(n -> sorted.put(n, answer));
    }
    return sorted;
  }

  /** The visits under which earlier runs filed. What waits for its view is not filed yet. */
  private static Map<ContentHash, String> filed(SeenDay day, Map<String, Sorted> before) {
    Map<ContentHash, String> filed = new HashMap<>();
    for (SeenPhoto photo : day.photos()) {
      if (before.get(photo.key()) instanceof Sorted.Filed known
          && known.view() != null
          && known.visit() != null) {
        filed.put(SimulatedPhotos.hash(photo), known.visit());
      }
    }
    return filed;
  }

  /** Each content once, in the order of the names, as the intake does. */
  private static Roll roll(List<SeenPhoto> here, Map<ContentHash, List<String>> names) {
    List<Photo> photos = new ArrayList<>();
    List<LeftOut> leftOut = new ArrayList<>();
    for (SeenPhoto seen : here) {
      ContentHash hash = SimulatedPhotos.hash(seen);
      List<String> known = names.computeIfAbsent(hash, key -> new ArrayList<>());
      if (known.isEmpty()) {
        photos.add(SimulatedPhotos.photo(seen));
      } else {
        leftOut.add(
            new LeftOut(seen.key(), LeftOutKind.DUPLICATE, "the same bytes", "nothing", hash));
      }
      known.add(seen.key());
    }
    return new Roll(photos, leftOut);
  }

  /** As the program gathers them: what earlier runs saw on the roll's days is known too. */
  private RollCards cards(
      SeenDay day, VisitList visits, Roll roll, Map<ContentHash, String> filed) {
    Map<ContentHash, SeenPhoto> byHash = new HashMap<>();
    day.photos().forEach(photo -> byHash.putIfAbsent(SimulatedPhotos.hash(photo), photo));
    Set<String> days = new TreeSet<>();
    roll.photos()
        .forEach(photo -> days.add(SimulatedPhotos.day(photo.arrival().name(), photo.facts())));
    List<Seen> earlier = new ArrayList<>();
    Set<ContentHash> known = new HashSet<>();
    for (SeenPhoto photo : day.photos()) {
      ContentHash hash = SimulatedPhotos.hash(photo);
      Seen seen = SimulatedPhotos.seen(photo, filed.getOrDefault(hash, ""));
      boolean near = days.contains(SimulatedPhotos.day(seen.name(), seen.facts()));
      if (photo.run() < day.run() && near && known.add(hash)) {
        earlier.add(seen);
      }
    }
    return RollCards.of(
        roll,
        photo -> Optional.ofNullable(byHash.get(photo.arrival().hash())).orElseThrow().sighting(),
        earlier,
        issued(day, visits),
        rules);
  }

  /** The cards were drawn from the list as it is. */
  private static List<IssuedCard> issued(SeenDay day, VisitList visits) {
    List<IssuedCard> issued = new ArrayList<>();
    for (SimulatedVisit visit : day.visits()) {
      visits
          .byKey(visit.key())
          .ifPresent(listed -> issued.add(IssuedCard.of(visit.token(), listed)));
    }
    return issued;
  }

  private static AssignSources sources(SeenDay day, VisitList visits) {
    return new AssignSources(
        visits,
        null,
        SimulatedLists.patterns(day),
        false,
        SimulatedLists.DECLARATIONS,
        ViewCatalogue.standard(),
        new TeethReader(Notation.ISO_3950),
        LowerArchShown.INCISORS_DOWN,
        day.zone(),
        "Nightly");
  }

  private static Sorted sorted(Assignment assignment, VisitList visits) {
    if (assignment instanceof Assignment.SetAside) {
      return new Sorted.SetAside();
    }
    if (assignment instanceof Assignment.Decided decided) {
      Decision decision = decided.decision();
      return new Sorted.Filed(
          decision.visit().patient().id(),
          decision.visit().key(),
          decision.view().key(),
          decision.mirror(),
          decision.incisors());
    }
    Assignment.Waits waits = (Assignment.Waits) assignment;
    String key = waits.proposal().get(PhotoFact.VISIT);
    Optional<Visit> visit = key == null ? Optional.empty() : visits.byKey(key);
    boolean settled = waits.reasons().stream().allMatch(r -> ABOUT_THE_VIEW.contains(r.kind()));
    return settled && visit.isPresent()
        ? new Sorted.Filed(visit.get().patient().id(), visit.get().key(), null, null, null)
        : new Sorted.Waits(
            String.join("; ", waits.reasons().stream().map(WaitReason::sentence).toList()));
  }
}
