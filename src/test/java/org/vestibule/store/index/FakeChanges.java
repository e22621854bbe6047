package org.vestibule.store.index;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/** Numbered changes in memory, as a ledger would give them. */
final class FakeChanges implements IndexChanges {

  private final String practice;
  private final List<Change> changes = new ArrayList<>();

  FakeChanges(String practice) {
    this.practice = practice;
  }

  static IndexRecord record(String name, int tooth, int day) {
    String hash = ContentHash.of(name.getBytes(UTF_8)).hex();
    return new IndexRecord(
        hash,
        hash.substring(0, 10),
        true,
        "2.25." + day,
        LocalDateTime.of(2026, 3, day, 9, 5),
        new IndexRecord.Who("P1", "willow", "Ada Reed", "", "B. Wren", "", "V1", null),
        new IndexRecord.Shows(
            "occlusal-upper",
            "upper occlusal",
            "tooth " + tooth,
            List.of(tooth),
            List.of(),
            List.of(),
            UsualFrame.NONE,
            "as-shot",
            "before",
            List.of()),
        "Lumo P1",
        "",
        name);
  }

  FakeChanges put(String name, int tooth, int day) {
    IndexRecord record = record(name, tooth, day);
    return add(record.hash(), IndexRecordJson.write(record));
  }

  FakeChanges undated(String name) {
    IndexRecord record = record(name, 16, 1);
    return add(
        record.hash(), IndexRecordJson.write(record).replaceFirst("\"taken\":\"[^\"]*\",", ""));
  }

  FakeChanges remove(String name) {
    return add(ContentHash.of(name.getBytes(UTF_8)).hex(), null);
  }

  private FakeChanges add(String id, @Nullable String json) {
    String before = changes.isEmpty() ? "" : changes.get(changes.size() - 1).mark();
    String mark = ContentHash.of((before + id + json).getBytes(UTF_8)).hex().substring(0, 32);
    changes.add(new Change(changes.size() + 1L, id, json, mark));
    return this;
  }

  @Override
  public String practice() {
    return practice;
  }

  @Override
  public Optional<Change> last() {
    return changes.isEmpty() ? Optional.empty() : at(changes.size());
  }

  @Override
  public Optional<Change> at(long sequence) {
    return changes.stream().filter(change -> change.sequence() == sequence).findFirst();
  }

  @Override
  public List<Change> after(long sequence, int most) {
    return changes.stream().filter(change -> change.sequence() > sequence).limit(most).toList();
  }
}
