package org.vestibule.store.index;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.KeywordField;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.StoredField;
import org.apache.lucene.document.StringField;

/** Makes an index document of a description. */
final class Documents {

  /** The field of the whole description. */
  static final String JSON = "json";

  private Documents() {}

  static Document of(String id, String json) {
    IndexRecord record = IndexRecordJson.read(json);
    Document document = new Document();
    add(document, IndexField.HASH, id);
    add(document, IndexField.ID, record.id());
    document.add(new StoredField(JSON, json));
    add(document, IndexField.STATE, record.filed() ? "filed" : "waiting");
    addAll(document, IndexField.ADVICE, record.advice());
    addAll(document, IndexField.DEVICE, FoldedWords.of(record.device()));
    addAll(document, IndexField.TEXT, FoldedWords.of(record.treatment() + " " + record.note()));
    who(document, record.who());
    shows(document, record.shows());
    document.add(new NumericDocValuesField(NewestFirst.FIELD, number(id, record)));
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
    if (!shows.viewKey().isEmpty()) {
      // A question may name a dozen views: of few candidates each is then asked for its view.
      document.add(new KeywordField(IndexField.VIEW.fieldName(), shows.viewKey(), Field.Store.NO));
    }
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

  private static long number(String id, IndexRecord record) {
    LocalDate day = record.day();
    LocalDateTime taken = record.takenAt();
    return NewestFirst.number(taken == null && day != null ? day.atStartOfDay() : taken, id);
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
