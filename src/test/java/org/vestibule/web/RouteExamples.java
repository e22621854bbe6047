package org.vestibule.web;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.vestibule.store.index.IndexRecord;

/** For each route with a value in its path an address that means something here. */
final class RouteExamples {

  private final Map<String, String> addresses;

  RouteExamples(SampleSite site) throws IOException {
    List<IndexRecord> filed = site.filed();
    String one = site.key(filed.get(0));
    String other =
        filed.stream()
            .filter(record -> record.who().patientId().equals(filed.get(0).who().patientId()))
            .skip(1)
            .findFirst()
            .map(site::key)
            .orElseThrow();
    addresses =
        Map.of(
            "/photograph/{key}", "/photograph/" + one,
            "/photograph/{key}/beside/{other}", "/photograph/" + one + "/beside/" + other,
            "/picture/{key}", "/picture/" + one,
            "/picture/{key}/small", "/picture/" + one + "/small",
            "/assets/{name}", "/assets/look.css");
  }

  /** An address at the route. */
  String address(Route route) {
    String address = route.path().contains("{") ? addresses.get(route.path()) : route.path();
    if (address == null) {
      throw new AssertionError("add an example for " + route.path() + " to RouteExamples");
    }
    return address;
  }
}
