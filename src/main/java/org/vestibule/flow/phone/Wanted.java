package org.vestibule.flow.phone;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.vestibule.assign.Completeness;
import org.vestibule.assign.TakenView;
import org.vestibule.assign.Visit;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.Series;
import org.vestibule.dental.SeriesCatalogue;
import org.vestibule.dental.SeriesSlot;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;
import org.vestibule.flow.Practice;
import org.vestibule.flow.SeriesGaps;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexAnswer;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexQuery;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.ledger.UploadRow;

/** Which views a visit still lacks, and how each looked before. */
public final class Wanted {

  private static final int MOST = 20;

  private final Practice practice;

  public Wanted(Practice practice) {
    this.practice = practice;
  }

  /**
   * The views that would fill what is missing of a series, the more particular first; what came by
   * phone counts from the moment it is here, if somebody said which view it is.
   *
   * @param series in words; empty wants nothing
   */
  public List<View> views(Visit visit, String series) {
    if (!(Series.find(series) instanceof Done<Series> known)) {
      return List.of();
    }
    Completeness found = new SeriesGaps(practice).of(visit, known.value(), byPhone(visit));
    List<String> missing = new ArrayList<>(found.missing());
    return SeriesCatalogue.slots(known.value()).stream()
        .filter(slot -> missing.remove(slot.name()))
        .map(SeriesSlot::views)
        .flatMap(List::stream)
        .distinct()
        .flatMap(key -> practice.views().byKey(key).stream())
        .toList();
  }

  private List<TakenView> byPhone(Visit visit) {
    return practice.store().ledger().uploads().receivedFor(visit.key()).stream()
        .filter(this::isNotSettled)
        .flatMap(upload -> practice.views().byKey(upload.view()).stream())
        .map(view -> new TakenView(view, Teeth.NONE, null, List.of()))
        .toList();
  }

  private boolean isNotSettled(UploadRow upload) {
    UploadRow.Received received = upload.received();
    return received != null
        && practice
            .store()
            .ledger()
            .photos()
            .find(received.hash())
            .map(PhotoRow::state)
            .filter(state -> state == PhotoState.KEPT || state == PhotoState.REJECTED)
            .isEmpty();
  }

  /** The latest filed photograph of this patient with this view. */
  public Optional<ContentHash> before(Visit visit, View view) throws IOException {
    practice.store().followIndex();
    List<AnyOf> must =
        List.of(
            AnyOf.of(IndexField.PATIENT, visit.patient().id().toLowerCase(Locale.ROOT)),
            AnyOf.of(IndexField.VIEW, view.key()),
            AnyOf.of(IndexField.STATE, "filed"));
    IndexQuery query = new IndexQuery(must, List.of(), null, null, 0, MOST);
    return practice.store().index().search(query).hits().stream()
        .map(IndexAnswer.Hit::record)
        .filter(record -> isOf(record, visit))
        .findFirst()
        .map(record -> new ContentHash(record.hash()));
  }

  private static boolean isOf(IndexRecord record, Visit visit) {
    return record.who().patientId().equals(visit.patient().id())
        && record.who().issuer().equals(visit.patient().issuer());
  }
}
