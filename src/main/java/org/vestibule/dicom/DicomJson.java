package org.vestibule.dicom;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Optional;
import java.util.function.Function;
import org.vestibule.base.Outcome;

/**
 * The DICOM JSON model (PS3.18 annex F) as text.
 *
 * <p>Bytes are inline as Base64 unless the caller names a place for them; encapsulated pixel data
 * always need one, since the model has no inline form for fragments.
 */
public final class DicomJson {

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  private DicomJson() {}

  /** The data set as one JSON object, every byte stream inline. */
  public static Outcome<String> write(DataSet data) {
    return write(data, element -> Optional.empty());
  }

  /**
   * The data set as one JSON object.
   *
   * @param bulkDataUri where the bytes of an element can be had instead; empty to write them inline
   */
  public static Outcome<String> write(
      DataSet data, Function<Element, Optional<String>> bulkDataUri) {
    try {
      JsonNode node = new JsonModelWriter(bulkDataUri).object(data);
      return Outcome.done(MAPPER.writeValueAsString(node));
    } catch (Refusal refusal) {
      return refusal.outcome();
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of plain values can't be written as JSON", e);
    }
  }

  /**
   * The data set that one JSON object holds. Its text is written in UTF-8 if it leaves ASCII.
   *
   * @param bulkData the bytes behind a BulkDataURI; empty if it can't be had
   */
  public static Outcome<DataSet> read(String json, Function<String, Optional<byte[]>> bulkData) {
    try {
      return Outcome.done(new JsonModelReader(bulkData).dataSet(MAPPER.readTree(json), 0));
    } catch (Refusal refusal) {
      return refusal.outcome();
    } catch (JsonProcessingException e) {
      return Outcome.refused(
          "not JSON, at line "
              + e.getLocation().getLineNr()
              + " column "
              + e.getLocation().getColumnNr(),
          "give one object of the DICOM JSON model (PS3.18 annex F)");
    }
  }
}
