package org.vestibule.assign;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
import org.vestibule.intake.FileNames;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;

/** Puts together everything that has a place in an order. */
final class RollCardsBuilder {

  private final Roll roll;
  private final Map<String, Seen> seen = new LinkedHashMap<>();
  private final Map<ContentHash, String> filed = new HashMap<>();

  RollCardsBuilder(Roll roll, List<Seen> earlier) {
    this.roll = roll;
    for (Seen each : earlier) {
      seen.put(each.name(), each);
      ContentHash hash = each.hash();
      if (hash != null && !each.filedVisit().isEmpty()) {
        filed.put(hash, each.filedVisit());
      }
    }
  }

  RollCards build(
      Function<Photo, CardSighting> sightings, List<IssuedCard> issued, SortingRules rules) {
    Map<ContentHash, Seen> byHash = new HashMap<>();
    for (Photo photo : roll.photos()) {
      Seen each = with(photo.arrival().name(), Seen.of(photo, sightings.apply(photo)));
      byHash.put(photo.arrival().hash(), each);
    }
    Set<String> unread = new HashSet<>();
    for (LeftOut file : roll.leftOut()) {
      Seen twin = file.kind() == LeftOutKind.DUPLICATE ? twin(file, byHash) : null;
      if (twin != null) {
        with(file.name(), twin);
      }
      Seen.of(file)
          .ifPresent(
              each -> {
                with(file.name(), each);
                unread.add(stem(file.name()));
              });
    }
    return new RollCards(List.copyOf(seen.values()), videos(unread), issued, rules);
  }

  private Seen with(String name, Seen found) {
    ContentHash hash = found.hash();
    String visit = hash == null ? "" : filed.getOrDefault(hash, "");
    Seen placed = new Seen(name, hash, found.facts(), found.sighting(), visit);
    seen.put(name, placed);
    return placed;
  }

  private static @Nullable Seen twin(LeftOut file, Map<ContentHash, Seen> byHash) {
    ContentHash hash = file.hash();
    return hash == null ? null : byHash.get(hash);
  }

  /** A video beside an unread picture of its name proves nothing of the picture's number. */
  private Set<String> videos(Set<String> unread) {
    Set<String> videos = new HashSet<>();
    roll.leftOut().stream()
        .filter(file -> file.kind() == LeftOutKind.VIDEO)
        .filter(file -> !unread.contains(stem(file.name())))
        .forEach(file -> videos.add(file.name()));
    return videos;
  }

  private static String stem(String name) {
    return FileNames.key(FileNames.stem(name));
  }
}
