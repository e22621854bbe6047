package org.vestibule.store.index;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.IntPoint;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.SortedDocValuesField;
import org.apache.lucene.document.StoredField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.util.BytesRef;

/** Makes an index document of a description. */
final class Documents {

  /** Field names that are not asked about by value. */
  static final String DAY = "day";

  static final String TIME = "time";
  static final String JSON = "json";
  static final String ORDER = "order";

  private Documents() {}

  static Document of(String id, String json) {
    IndexRecord record = IndexRecordJson.read(json);
    Document document = new Document();
    add(document, IndexField.HASH, id);
    add(document, IndexField.ID, record.id());
    document.add(new SortedDocValuesField(ORDER, new BytesRef(id)));
    document.add(new StoredField(JSON, json));
    add(document, IndexField.STATE, record.filed() ? "filed" : "waiting");
    addAll(document, IndexField.ADVICE, record.advice());
    addAll(document, IndexField.DEVICE, FoldedWords.of(record.device()));
    addAll(document, IndexField.TEXT, FoldedWords.of(record.treatment() + " " + record.note()));
    who(document, record.who());
    shows(document, record.shows());
    time(document, record);
    return document;
  }

  private static void who(Document document, IndexRecord.Who who) {
    add(document, IndexField.PATIENT, who.patientId().toLowerCase(Locale.ROOT));
    add(document, IndexField.ACCESSION, who.accession().toLowerCase(Locale.ROOT));
    names(document, IndexField.NAME, who.name());
    names(document, IndexField.REFERRER, who.referrer());
    names(document, IndexField.DENTIST, who.dentist());
  }

  /** Names are found by each of their spellings. */
  private static void names(Document document, IndexField field, String name) {
    FoldedWords.of(name).forEach(word -> addAll(document, field, FoldedWords.spellings(word)));
  }

  private static void shows(Document document, IndexRecord.Shows shows) {
    add(document, IndexField.VIEW, shows.viewKey());
    add(document, IndexField.MIRROR, shows.mirror());
    add(document, IndexField.STAGE, shows.stage());
    addAll(document, IndexField.ACCESSORY, shows.accessories());
    addAll(document, IndexField.AREA, shows.areas());
    addAll(document, IndexField.POSITION, shows.occupants());
    for (String occupant : shows.occupants()) {
      add(document, IndexField.OCCUPANT, occupant.substring(occupant.indexOf(' ') + 1));
    }
    addAll(document, IndexField.TOOTH, shows.teeth());
    addAll(document, IndexField.SEGMENT, shows.usual().segment());
    addAll(document, IndexField.QUADRANT, shows.usual().quadrant());
    addAll(document, IndexField.ARCH, shows.usual().arch());
    addAll(document, IndexField.MOUTH, shows.usual().mouth());
  }

  /** Local time as if it were UTC: only its order counts. */
  private static void time(Document document, IndexRecord record) {
    LocalDate day = record.day();
    if (day != null) {
      LocalDateTime taken = record.takenAt();
      LocalDateTime time = taken != null ? taken : day.atStartOfDay();
      document.add(new IntPoint(DAY, Math.toIntExact(day.toEpochDay())));
      document.add(new NumericDocValuesField(TIME, time.toEpochSecond(ZoneOffset.UTC)));
    }
  }

  private static void addAll(Document document, IndexField field, List<?> values) {
    values.forEach(value -> add(document, field, value.toString()));
  }

  private static void add(Document document, IndexField field, String value) {
    if (!value.isEmpty()) {
      document.add(new StringField(field.fieldName(), value, Field.Store.NO));
    }
  }
}
