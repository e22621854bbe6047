package org.vestibule.store.index;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.CharBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Writes descriptions as JSON text and reads them back: one flat object of texts and lists of
 * texts. By hand on the streaming parser, since binding by reflection costs a command line more
 * than the search itself.
 */
public final class IndexRecordJson {

  private static final JsonFactory JSON = new JsonFactory();

  /** Room in which a description's fields find their places without being moved. */
  private static final int MOST_FIELDS = 64;

  private static final int DECIMAL = 10;
  private static final Set<String> NUMBERS =
      Set.of("teeth", "segment", "quadrant", "arch", "mouth");

  private IndexRecordJson() {}

  public static String write(IndexRecord record) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = JSON.createGenerator(text)) {
      json.writeStartObject();
      head(json, record);
      who(json, record.who());
      shows(json, record.shows());
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  private static void head(JsonGenerator json, IndexRecord record) throws IOException {
    put(json, "hash", record.hash());
    put(json, "id", record.id());
    put(json, "state", record.filed() ? "filed" : "waiting");
    put(json, "object", record.objectUid());
    put(json, "taken", record.takenAt());
    put(json, "device", record.device());
    put(json, "treatment", record.treatment());
    put(json, "note", record.note());
    put(json, "advice", record.advice());
  }

  private static void who(JsonGenerator json, IndexRecord.Who who) throws IOException {
    put(json, "patient", who.patientId());
    put(json, "issuer", who.issuer());
    put(json, "name", who.name());
    put(json, "referrer", who.referrer());
    put(json, "dentist", who.dentist());
    put(json, "accession", who.accession());
    put(json, "visit", who.visitKey());
    put(json, "visitDate", who.visitDate());
  }

  private static void shows(JsonGenerator json, IndexRecord.Shows shows) throws IOException {
    put(json, "view", shows.viewKey());
    put(json, "viewName", shows.viewName());
    put(json, "teethWords", shows.teethWords());
    put(json, "teeth", shows.teeth());
    put(json, "occupants", shows.occupants());
    put(json, "areas", shows.areas());
    put(json, "segment", shows.usual().segment());
    put(json, "quadrant", shows.usual().quadrant());
    put(json, "arch", shows.usual().arch());
    put(json, "mouth", shows.usual().mouth());
    put(json, "mirror", shows.mirror());
    put(json, "stage", shows.stage());
    put(json, "accessories", shows.accessories());
  }

  private static void put(JsonGenerator json, String name, @Nullable Object value)
      throws IOException {
    if (value != null && !value.toString().isEmpty()) {
      json.writeStringField(name, value.toString());
    }
  }

  private static void put(JsonGenerator json, String name, List<?> values) throws IOException {
    if (!values.isEmpty()) {
      json.writeArrayFieldStart(name);
      for (Object value : values) {
        json.writeString(value.toString());
      }
      json.writeEndArray();
    }
  }

  /**
   * The description that the text holds.
   *
   * @throws IllegalArgumentException if the text is no description
   */
  public static IndexRecord read(String text) {
    return PlainRecord.read(text).orElseGet(() -> parsed(text));
  }

  /** The same by the library, which understands it in any form. */
  static IndexRecord parsed(String text) {
    return new Fields(parse(text)).record();
  }

  private static Map<String, Object> parse(String text) {
    Map<String, Object> fields = new HashMap<>(MOST_FIELDS);
    try (JsonParser json = JSON.createParser(text)) {
      if (json.nextToken() != JsonToken.START_OBJECT) {
        throw new IllegalArgumentException("the description of a photograph is no JSON object");
      }
      String name = json.nextFieldName();
      for (; name != null; name = json.nextFieldName()) {
        fields.put(
            name,
            json.nextToken() == JsonToken.START_ARRAY
                ? NUMBERS.contains(name) ? numbers(json) : texts(json)
                : json.getText());
      }
      return fields;
    } catch (IOException e) {
      throw new IllegalArgumentException("the description of a photograph is damaged", e);
    }
  }

  private static List<String> texts(JsonParser json) throws IOException {
    List<String> texts = new ArrayList<>();
    while (json.nextToken() != JsonToken.END_ARRAY) {
      texts.add(json.getText());
    }
    return texts;
  }

  /** Numbers are written as texts; a photograph has dozens, so none becomes a text of its own. */
  private static List<Integer> numbers(JsonParser json) throws IOException {
    List<Integer> numbers = new ArrayList<>(MOST_FIELDS);
    while (json.nextToken() != JsonToken.END_ARRAY) {
      CharBuffer digits =
          CharBuffer.wrap(json.getTextCharacters(), json.getTextOffset(), json.getTextLength());
      numbers.add(Integer.parseInt(digits, 0, digits.length(), DECIMAL));
    }
    return List.copyOf(numbers);
  }

  /** The fields of a description. */
  private record Fields(Map<String, Object> values) {

    IndexRecord record() {
      String object = text("object");
      String taken = text("taken");
      return new IndexRecord(
          text("hash"),
          text("id"),
          text("state").equals("filed"),
          object.isEmpty() ? null : object,
          taken.isEmpty() ? null : IsoTime.dateTime(taken),
          who(),
          shows(),
          text("device"),
          text("treatment"),
          text("note"),
          list("advice"));
    }

    private IndexRecord.Who who() {
      String date = text("visitDate");
      return new IndexRecord.Who(
          text("patient"),
          text("issuer"),
          text("name"),
          text("referrer"),
          text("dentist"),
          text("accession"),
          text("visit"),
          date.isEmpty() ? null : IsoTime.date(date));
    }

    private IndexRecord.Shows shows() {
      return new IndexRecord.Shows(
          text("view"),
          text("viewName"),
          text("teethWords"),
          list("teeth"),
          list("occupants"),
          list("areas"),
          new UsualFrame(list("segment"), list("quadrant"), list("arch"), list("mouth")),
          text("mirror"),
          text("stage"),
          list("accessories"));
    }

    private String text(String name) {
      return (String) values.getOrDefault(name, "");
    }

    @SuppressWarnings("unchecked")
    private <T> List<T> list(String name) {
      return (List<T>) values.getOrDefault(name, List.of());
    }
  }
}
