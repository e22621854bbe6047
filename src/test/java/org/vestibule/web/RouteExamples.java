package org.vestibule.web;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.vestibule.flow.phone.Receiving;
import org.vestibule.flow.phone.UploadRules;
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
    String waiting = site.waiting("IMG_0010.JPG");
    String file = "0123456789abcdef";
    new Receiving(site.practice(), UploadRules.DEFAULT)
        .begin(site.phonesPage(), file, "IMG_0001.JPG", 1000, "")
        .orThrow();
    addresses =
        Map.ofEntries(
            Map.entry("/photograph/{key}", "/photograph/" + one),
            Map.entry(
                "/photograph/{key}/beside/{other}", "/photograph/" + one + "/beside/" + other),
            Map.entry("/photograph/{key}/grey-card", "/photograph/" + one + "/grey-card"),
            Map.entry("/picture/{key}", "/picture/" + one),
            Map.entry("/picture/{key}/small", "/picture/" + one + "/small"),
            Map.entry("/waiting/{key}", "/waiting/" + waiting),
            Map.entry("/asked/{key}", "/asked/" + waiting),
            Map.entry("/asked/{key}/small", "/asked/" + waiting + "/small"),
            Map.entry("/preview/{key}", "/preview/" + waiting),
            Map.entry("/preview/{key}/picture", "/preview/" + waiting + "/picture"),
            Map.entry("/correct/{key}", "/correct/" + one),
            Map.entry("/take-back/{key}", "/take-back/" + one),
            Map.entry("/reject/{key}", "/reject/" + one),
            Map.entry("/share/{key}", "/share/" + one),
            Map.entry("/shares/{number}/end", "/shares/999999/end"),
            Map.entry("/shared/photographs/{name}", "/shared/photographs/copy-01"),
            Map.entry("/shared/pictures/{name}", "/shared/pictures/copy-01"),
            Map.entry("/shared/pictures/{name}/small", "/shared/pictures/copy-01/small"),
            Map.entry("/ways/{number}/end", "/ways/999999/end"),
            Map.entry("/phone/guide/{view}", "/phone/guide/upper-occlusal"),
            Map.entry("/phone/files/{id}", "/phone/files/" + file),
            Map.entry("/phone/files/{id}/from/{from}", "/phone/files/" + file + "/from/0"),
            Map.entry("/phone/files/{id}/end", "/phone/files/" + file + "/end"),
            Map.entry("/assets/{name}", "/assets/look.css"));
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
