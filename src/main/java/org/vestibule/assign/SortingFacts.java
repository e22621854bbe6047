package org.vestibule.assign;

import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.vestibule.intake.FileNames;

/**
 * What cards and times are compared with.
 *
 * @param visits the practice's visits
 * @param issued the visit cards that were drawn
 * @param otherFiles names of files that may have used up a file number
 * @param claims what rows and names say, by photograph
 * @param zone where the practice's clocks are
 * @param rules what the site has settled
 */
record SortingFacts(
    VisitList visits,
    Map<String, IssuedCard> issued,
    Set<String> otherFiles,
    Map<String, List<PhotoClaim>> claims,
    ZoneId zone,
    SortingRules rules) {

  private static final Set<String> VIDEOS =
      Set.of("mov", "mp4", "m4v", "3gp", "avi", "mts", "webm");

  SortingFacts {
    issued = Map.copyOf(issued);
    otherFiles = Set.copyOf(otherFiles);
    claims = Map.copyOf(claims);
  }

  static SortingFacts of(
      RollCards cards, VisitList visits, Map<String, List<PhotoClaim>> claims, ZoneId zone) {
    Map<String, IssuedCard> byToken = new HashMap<>();
    cards.issued().forEach(card -> byToken.put(card.token(), card));
    return new SortingFacts(visits, byToken, videos(cards), claims, zone, cards.rules());
  }

  /**
   * The videos among the other files. Only a video surely used up its number: a companion file's
   * photograph may still be on its way, and beside a picture that can't be read it proves nothing.
   */
  private static Set<String> videos(RollCards cards) {
    Set<String> unread =
        cards.seen().stream()
            .filter(Seen::refused)
            .map(each -> stem(each.name()))
            .collect(Collectors.toSet());
    return cards.otherFiles().stream()
        .filter(name -> VIDEOS.contains(FileNames.extension(name)))
        .filter(name -> !unread.contains(stem(name)))
        .collect(Collectors.toSet());
  }

  private static String stem(String name) {
    return FileNames.key(FileNames.stem(name));
  }

  List<PhotoClaim> claims(Member member) {
    return claims.getOrDefault(member.seen().name(), List.of());
  }

  PhotoTime time(Device device, Seen seen) {
    return rules
        .correction(device)
        .map(correction -> PhotoTime.of(correction.applied(seen.facts()), zone))
        .orElseGet(() -> PhotoTime.of(seen.facts(), zone));
  }
}
