package org.vestibule.store;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.vestibule.store.index.IndexAnswer;
import org.vestibule.store.index.IndexQuery;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.index.PhotoIndex;
import org.vestibule.store.ledger.ChangeRow;
import org.vestibule.store.ledger.Ledger;

/** Holds every description in the index against the one in the ledger. */
final class IndexComparison {

  private static final int PAGE = 500;

  private final Ledger ledger;
  private final PhotoIndex index;

  IndexComparison(Ledger ledger, PhotoIndex index) {
    this.ledger = ledger;
    this.index = index;
  }

  List<Finding> findings() throws IOException {
    if (index.isDamaged()) {
      return List.of(finding("the index is damaged"));
    }
    long behind = ledger.changes().last().map(ChangeRow::sequence).orElse(0L) - index.sequence();
    if (behind != 0) {
      return List.of(
          finding(
              behind > 0
                  ? "the index is " + behind + " changes behind the ledger"
                  : "the index is ahead of the ledger"));
    }
    Map<String, IndexRecord> expected = expected();
    Map<String, IndexRecord> found = found();
    Set<String> all = new TreeSet<>(expected.keySet());
    all.addAll(found.keySet());
    List<Finding> findings = new ArrayList<>();
    for (String hash : all) {
      String brief = hash.substring(0, 10);
      if (!found.containsKey(hash)) {
        findings.add(finding("the index lacks photograph " + brief));
      } else if (!expected.containsKey(hash)) {
        findings.add(finding("the index still has photograph " + brief));
      } else if (!expected.get(hash).equals(found.get(hash))) {
        findings.add(finding("the index describes photograph " + brief + " wrongly"));
      }
    }
    return findings;
  }

  private static Finding finding(String what) {
    return new Finding(Finding.Kind.INDEX, what, "run reindex");
  }

  private Map<String, IndexRecord> expected() {
    Map<String, IndexRecord> expected = new HashMap<>();
    long at = 0;
    for (List<ChangeRow> page = ledger.changes().after(at, PAGE);
        !page.isEmpty();
        page = ledger.changes().after(at, PAGE)) {
      for (ChangeRow change : page) {
        at = change.sequence();
        String record = change.record();
        if (record == null) {
          expected.remove(change.id());
        } else {
          expected.put(change.id(), IndexRecordJson.read(record));
        }
      }
    }
    return expected;
  }

  private Map<String, IndexRecord> found() throws IOException {
    Map<String, IndexRecord> found = new HashMap<>();
    IndexAnswer everything = index.search(IndexQuery.all(Integer.MAX_VALUE));
    everything.hits().forEach(hit -> found.put(hit.record().hash(), hit.record()));
    return found;
  }
}
