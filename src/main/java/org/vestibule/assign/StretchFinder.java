package org.vestibule.assign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds the stretches of a device's order. A visit's card opens, the next photograph of the same
 * card closes, a third opens again; one photographed twice in a row counts once. Where a visit's
 * card was photographed an odd number of times, one of them is missing, and nobody can tell which.
 */
final class StretchFinder {

  private record Group(String token, int first, int last) {}

  private final List<Member> ordered;
  private final List<Group> groups = new ArrayList<>();

  StretchFinder(DeviceRoll roll) {
    this.ordered = roll.ordered();
  }

  List<Stretch> find() {
    group();
    Map<String, List<Integer>> ofToken = new LinkedHashMap<>();
    for (int at = 0; at < groups.size(); at++) {
      ofToken.computeIfAbsent(groups.get(at).token(), key -> new ArrayList<>()).add(at);
    }
    List<Stretch> stretches = new ArrayList<>();
    ofToken.values().forEach(places -> add(places, stretches));
    return stretches;
  }

  private void group() {
    for (int at = 0; at < ordered.size(); at++) {
      String token = ordered.get(at).token();
      if (token == null) {
        continue;
      }
      Group last = groups.isEmpty() ? null : groups.get(groups.size() - 1);
      if (last != null && last.token().equals(token) && last.last() == at - 1) {
        groups.set(groups.size() - 1, new Group(token, last.first(), at));
      } else {
        groups.add(new Group(token, at, at));
      }
    }
  }

  private void add(List<Integer> places, List<Stretch> stretches) {
    Group first = groups.get(places.get(0));
    if (places.size() == 1) {
      int next = places.get(0) + 1;
      int end = next < groups.size() ? groups.get(next).first() - 1 : ordered.size() - 1;
      stretches.add(new Stretch(first.token(), first.first(), end, Stretch.Kind.OPENED));
      return;
    }
    if (places.size() % 2 == 1) {
      Group last = groups.get(places.get(places.size() - 1));
      stretches.add(new Stretch(first.token(), first.first(), last.last(), Stretch.Kind.UNCLEAR));
      return;
    }
    for (int at = 0; at < places.size(); at += 2) {
      Group opens = groups.get(places.get(at));
      Group closes = groups.get(places.get(at + 1));
      stretches.add(new Stretch(first.token(), opens.first(), closes.last(), Stretch.Kind.CLOSED));
    }
  }
}
