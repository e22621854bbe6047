package org.vestibule.assign;

import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

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

  SortingFacts {
    issued = Map.copyOf(issued);
    otherFiles = Set.copyOf(otherFiles);
    claims = Map.copyOf(claims);
  }

  static SortingFacts of(
      RollCards cards, VisitList visits, Map<String, List<PhotoClaim>> claims, ZoneId zone) {
    Map<String, IssuedCard> byToken = new HashMap<>();
    cards.issued().forEach(card -> byToken.put(card.token(), card));
    return new SortingFacts(visits, byToken, cards.otherFiles(), claims, zone, cards.rules());
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
