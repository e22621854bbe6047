package org.vestibule.assign;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sorts photographs by the cards among them. For each it says which visit two facts settle, which
 * one is likely, and why the cards are not enough.
 *
 * <p>A card photographed before and after says whose the photographs between are; their times say
 * it again, from the visit list. Both must agree, and each must be unambiguous by itself: no other
 * visit's card between, no other patient's visit at that time. So a single mistake, in the cards or
 * in the times, never files a photograph under another patient.
 */
public final class Sorting {

  private final Map<String, Sorted> byName = new HashMap<>();
  private final List<String> notes = new ArrayList<>();

  private Sorting() {}

  /**
   * Sorts by cards and visits alone.
   *
   * @param visits the practice's
   * @param zone where its clocks are
   */
  public static Sorting sort(RollCards cards, VisitList visits, ZoneId zone) {
    return sort(cards, SortingFacts.of(cards, visits, Map.of(), zone));
  }

  static Sorting sort(RollCards cards, SortingFacts facts) {
    Map<Device, List<Member>> devices = new LinkedHashMap<>();
    for (Seen seen : cards.seen()) {
      Device device = Device.of(seen.name(), seen.facts());
      devices
          .computeIfAbsent(device, key -> new ArrayList<>())
          .add(Member.of(seen, facts.time(device, seen)));
    }
    Sorting sorting = new Sorting();
    devices.forEach((device, members) -> sorting.add(DeviceRoll.of(device, members), facts));
    return sorting;
  }

  private void add(DeviceRoll roll, SortingFacts facts) {
    DeviceSorting device = new DeviceSorting(roll, facts);
    device.sort(byName);
    String clock = device.clockNote();
    if (clock != null) {
      notes.add(clock);
    }
    notes.addAll(LateArrivals.notes(roll, device.stretches()));
  }

  /** What the cards say about the photograph of this name. */
  public Sorted of(String name) {
    return byName.getOrDefault(name, Sorted.NONE);
  }

  /** What is odd about a device; each a sentence without patient data. */
  public List<String> notes() {
    return List.copyOf(notes);
  }
}
