package org.vestibule.forward;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomJson;
import org.vestibule.dicom.Tags;

/** What an archive answers to a search (PS3.18 10.6.3). */
final class SearchResponse {

  private static final ObjectMapper JSON = new ObjectMapper();

  private static final Map<String, Integer> IDENTIFIERS =
      Map.of(
          "StudyInstanceUID", Tags.StudyInstanceUID,
          "SeriesInstanceUID", Tags.SeriesInstanceUID,
          "PatientID", Tags.PatientID,
          "AccessionNumber", Tags.AccessionNumber);

  private SearchResponse() {}

  /**
   * The identifiers under which the archive has the object; empty if it has it not.
   *
   * @return refused if the answer is none
   */
  static Outcome<Optional<Map<String, String>>> identifiers(WebCall.Answer answer, String uid) {
    if (answer.status() == 204 || answer.status() == 404) {
      return Outcome.done(Optional.empty());
    }
    if (answer.status() != 200) {
      return refused(
          answer.status() < 300
              ? "the archive answered a search with another status"
              : StatusTable.HTTP.meaning(answer.status()).words(),
          answer.status());
    }
    if (!answer.trouble().isEmpty()) {
      return refused(answer.trouble(), 200);
    }
    if (answer.cutOff()) {
      return refused("the archive's answer to a search for one object is endless", 200);
    }
    try {
      JsonNode all = JSON.readTree(new String(answer.body(), UTF_8));
      if (!all.isArray()) {
        return refused("the archive's answer to a search is not a list", 200);
      }
      for (JsonNode one : all) {
        if (DicomJson.read(one.toString(), uri -> Optional.empty()) instanceof Done<DataSet> match
            && match.value().string(Tags.SOPInstanceUID).equals(Optional.of(uid))) {
          return Outcome.done(Optional.of(identifiers(match.value())));
        }
      }
      return Outcome.done(Optional.empty());
    } catch (JsonProcessingException e) {
      return refused("the archive's answer to a search is no JSON", 200);
    }
  }

  private static Map<String, String> identifiers(DataSet match) {
    Map<String, String> known = new TreeMap<>();
    IDENTIFIERS.forEach(
        (keyword, tag) -> match.string(tag).ifPresent(value -> known.put(keyword, value)));
    return known;
  }

  private static <T> Outcome<T> refused(String words, int status) {
    return Outcome.refused(
        words + " (HTTP status " + status + ")", "ask who runs the archive about its search");
  }
}
