package org.vestibule.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Map;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.phone.Receiving;
import org.vestibule.flow.phone.Receiving.State;
import org.vestibule.store.ledger.PhoneLinkRow;

/** Takes files from phones, piece by piece; answers are JSON for the page's script. */
final class PhoneFiles {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);
  private static final int ID_BYTES = 16;
  private static final String NUMBER = "\\d{1,12}";

  private final PhonePages pages;
  private final Receiving receiving;
  private final SecureRandom random = new SecureRandom();

  PhoneFiles(PhonePages pages, Receiving receiving) {
    this.pages = pages;
    this.receiving = receiving;
  }

  /** Begins a file, or goes on with it. */
  Answer begin(Asked asked) throws IOException {
    return pages.with(
        asked,
        link -> {
          String size = asked.form("size");
          if (!size.matches(NUMBER)) {
            return refused(new Refused<>("the file's size is not said", "load the page again"));
          }
          byte[] id = new byte[ID_BYTES];
          random.nextBytes(id);
          return answer(
              receiving.begin(
                  link,
                  HexFormat.of().formatHex(id),
                  asked.form("name"),
                  Long.parseLong(size),
                  asked.form("view")));
        });
  }

  /** How far all files of the page have come, for a page that was loaded again. */
  Answer all(Asked asked) throws IOException {
    return pages.with(
        asked,
        link ->
            written(
                Map.of("files", receiving.all(link).stream().map(PhoneFiles::values).toList())));
  }

  /** How far a file has come. */
  Answer state(Asked asked) throws IOException {
    return pages.with(
        asked,
        link ->
            receiving
                .find(link, asked.path("id"))
                .map(PhoneFiles::json)
                .orElseGet(() -> Answers.notFound(asked)));
  }

  /** Adds a piece. */
  Answer add(Asked asked) throws IOException {
    return pages.with(asked, link -> add(asked, link));
  }

  private Answer add(Asked asked, PhoneLinkRow link) throws IOException {
    String from = asked.path("from");
    return from.matches(NUMBER) && receiving.find(link, asked.path("id")).isPresent()
        ? answer(receiving.add(link, asked.path("id"), Long.parseLong(from), asked.body()))
        : Answers.notFound(asked);
  }

  /** Ends a file. */
  Answer end(Asked asked) throws IOException {
    return pages.with(
        asked,
        link -> {
          String hash = asked.form("hash");
          if (receiving.find(link, asked.path("id")).isEmpty()) {
            return Answers.notFound(asked);
          }
          return hash.isEmpty() || hash.matches("[0-9a-f]{64}")
              ? answer(receiving.end(link, asked.path("id"), hash))
              : refused(new Refused<>("the check value has another form", "load the page again"));
        });
  }

  private static Answer answer(Outcome<State> outcome) {
    return outcome instanceof Done<State> done
        ? json(done.value())
        : refused((Refused<State>) outcome);
  }

  private static Answer json(State state) {
    return written(values(state));
  }

  private static Map<String, Object> values(State state) {
    return Map.of(
        "id", state.id(),
        "size", state.sizeBytes(),
        "received", state.receivedBytes(),
        "hash", state.hash(),
        "confirmed", state.confirmed());
  }

  private static Answer refused(Refused<?> refused) {
    return written(Map.of("reason", refused.reason(), "advice", refused.advice())).with(409);
  }

  private static Answer written(Map<String, Object> values) {
    try {
      return Answer.json(JSON.writeValueAsString(values));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a map can't be written as JSON", e);
    }
  }
}
