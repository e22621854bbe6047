package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import org.vestibule.samples.SampleFolder;

/** What became of the sample roll, held against the plan. */
final class PlannedFate {

  private PlannedFate() {}

  static void holds(IngestReport report) throws IOException {
    Map<String, String> expected = new TreeMap<>();
    for (Map<String, String> row : SampleFolder.expected()) {
      expected.put(row.get("file"), row.get("expected"));
    }
    Map<String, String> found = new TreeMap<>();
    report.filed().forEach(photo -> found.put(photo.name(), "filed"));
    report.waiting().forEach(photo -> found.put(photo.name(), "waits"));
    report.leftOut().forEach(file -> found.put(file.name(), "left-out"));
    found.keySet().retainAll(expected.keySet());
    assertThat(found).isEqualTo(expected);
  }
}
