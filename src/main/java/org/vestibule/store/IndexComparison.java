package org.vestibule.store;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexQuery;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.index.IndexTerm;
import org.vestibule.store.index.PhotoIndex;
import org.vestibule.store.ledger.ChangeRow;
import org.vestibule.store.ledger.Ledger;

/** Holds every description in the index against the one in the ledger. */
final class IndexComparison {

  private static final int PAGE = 500;
  private static final int BRIEF = 10;
  private static final String STILL = "the index still has photograph %s";

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
    Map<String, Finding> findings = new TreeMap<>();
    int described = byLedger(findings);
    if (index.size() != described) {
      index.each(record -> unknown(record, findings));
    }
    return List.copyOf(findings.values());
  }

  /** Page by page, so that a record of any size needs no more memory than a small one. */
  private int byLedger(Map<String, Finding> findings) throws IOException {
    int described = 0;
    long at = 0;
    for (List<ChangeRow> page = ledger.changes().standing(at, PAGE);
        !page.isEmpty();
        page = ledger.changes().standing(at, PAGE)) {
      Map<String, IndexRecord> found = described(page);
      described += found.size();
      for (ChangeRow change : page) {
        at = change.sequence();
        compared(change, found.get(change.id()), findings);
      }
    }
    return described;
  }

  private Map<String, IndexRecord> described(List<ChangeRow> page) throws IOException {
    AnyOf these =
        new AnyOf(
            page.stream().map(change -> new IndexTerm(IndexField.HASH, change.id())).toList());
    IndexQuery asked = new IndexQuery(List.of(these), List.of(), null, null, 0, page.size());
    Map<String, IndexRecord> found = new HashMap<>();
    index.search(asked).hits().forEach(hit -> found.put(hit.record().hash(), hit.record()));
    return found;
  }

  private static void compared(
      ChangeRow change, @Nullable IndexRecord found, Map<String, Finding> findings) {
    String record = change.record();
    if (found == null) {
      if (record != null) {
        add("the index lacks photograph %s", change.id(), findings);
      }
    } else if (record == null) {
      add(STILL, change.id(), findings);
    } else if (!IndexRecordJson.read(record).equals(found)) {
      add("the index describes photograph %s wrongly", change.id(), findings);
    }
  }

  private void unknown(IndexRecord record, Map<String, Finding> findings) {
    if (ledger.changes().latest(record.hash()).isEmpty()) {
      add(STILL, record.hash(), findings);
    }
  }

  private static void add(String what, String hash, Map<String, Finding> findings) {
    String brief = hash.substring(0, BRIEF);
    findings.put(hash, finding(String.format(Locale.ROOT, what, brief)));
  }

  private static Finding finding(String what) {
    return new Finding(Finding.Kind.INDEX, what, "run reindex");
  }
}
