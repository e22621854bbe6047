package org.vestibule.forward;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomJson;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.forward.StoreAnswer.Accepted;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;
import org.vestibule.forward.StoreAnswer.Refused;

/** What an archive answers to a store (PS3.18 10.5.3 and annex I.2). */
final class StoreResponse {

  private static final int UNSPECIFIED_FAILURE = 0x0110;

  // PS3.6 table 6-1
  private static final int WARNING_REASON = 0x00081196;
  private static final int FAILURE_REASON = 0x00081197;
  private static final int FAILED_SOP_SEQUENCE = 0x00081198;
  private static final int OTHER_FAILURES_SEQUENCE = 0x0008119A;

  private final WebCall.Answer answer;

  StoreResponse(WebCall.Answer answer) {
    this.answer = answer;
  }

  /** What it says about the one object that was sent. */
  StoreAnswer about(String sopInstanceUid) {
    Optional<DataSet> said = said();
    Optional<DataSet> failure =
        said.flatMap(data -> item(data.items(FAILED_SOP_SEQUENCE), sopInstanceUid));
    if (failure.isPresent()) {
      long reason = failure.get().integer(FAILURE_REASON).orElse(UNSPECIFIED_FAILURE);
      return StoreStatus.failure((int) reason & 0xFFFF);
    }
    boolean success = answer.status() == 200 || answer.status() == 202;
    if (success && !answer.trouble().isEmpty()) {
      String words = answer.trouble() + " (HTTP status " + answer.status() + ")";
      return new Failed(StoreAnswer.NO_STATUS, words, Reach.OBJECT, true);
    }
    Optional<DataSet> stored =
        said.flatMap(data -> item(data.items(Tags.ReferencedSOPSequence), sopInstanceUid));
    if (success && stored.isPresent()) {
      return stored(stored.get());
    }
    if (success && said.filter(StoreResponse::namesOthers).isEmpty()) {
      return new Accepted(0, "the archive does not say what it stored", Map.of());
    }
    if (success) {
      return new Failed(
          StoreAnswer.NO_STATUS, "the archive answered about another object", Reach.OBJECT, true);
    }
    return byStatus();
  }

  private static boolean namesOthers(DataSet said) {
    return !said.items(Tags.ReferencedSOPSequence).isEmpty()
        || !said.items(FAILED_SOP_SEQUENCE).isEmpty()
        || !said.items(OTHER_FAILURES_SEQUENCE).isEmpty();
  }

  private static StoreAnswer stored(DataSet item) {
    int warning = (int) item.integer(WARNING_REASON).orElse(0) & 0xFFFF;
    TreeSet<String> changed = new TreeSet<>();
    for (DataSet original : item.items(Tags.OriginalAttributesSequence)) {
      for (DataSet before : original.items(Tags.ModifiedAttributesSequence)) {
        for (Element element : before) {
          changed.add(element.keyword());
        }
      }
    }
    String names = changed.isEmpty() ? "" : "it changed " + String.join(", ", changed);
    return StoreStatus.answer(warning, names);
  }

  private StoreAnswer byStatus() {
    StatusTable.Meaning meaning = StatusTable.HTTP.meaning(answer.status());
    String words = meaning.words() + " (HTTP status " + answer.status() + ")";
    return switch (meaning.effect()) {
      case REFUSED -> new Refused(answer.status(), words);
      case STOP -> new Failed(answer.status(), words, Reach.DESTINATION, isUnclear());
      case LATER, ACCEPTED, THERE -> new Failed(answer.status(), words, Reach.OBJECT, isUnclear());
    };
  }

  /** RFC 9110 15.5: 4xx is no; whoever fails or only passes on (15.6) may have stored it first. */
  private boolean isUnclear() {
    return answer.status() < 400 || answer.status() >= 500;
  }

  private static Optional<DataSet> item(List<DataSet> items, String sopInstanceUid) {
    return items.stream()
        .filter(
            item -> item.string(Tags.ReferencedSOPInstanceUID).equals(Optional.of(sopInstanceUid)))
        .findFirst();
  }

  /** The body as a data set, if it is one in JSON or in the native model of PS3.19. */
  private Optional<DataSet> said() {
    if (answer.cutOff() || answer.body().length == 0) {
      return Optional.empty();
    }
    Outcome<DataSet> read =
        answer.isXml()
            ? NativeModel.read(answer.body())
            : DicomJson.read(new String(answer.body(), UTF_8), uri -> Optional.empty());
    return read instanceof Done<DataSet> done ? Optional.of(done.value()) : Optional.empty();
  }
}
