package org.vestibule.web;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.words.Language;

/**
 * What a page says.
 *
 * @param status HTTP status
 * @param template the template to fill; empty if the answer is bytes or leads elsewhere
 * @param model what fills it
 * @param whole true for a page of its own, false for a part that a script puts into one
 * @param type media type of the bytes
 * @param bytes the bytes; empty with a template
 * @param location where it leads; empty if nowhere
 * @param etag if not empty, the answer holds nothing of a patient and may be kept with this mark
 * @param session the secret of a session that begins; empty to end it; null to leave it
 */
@SuppressWarnings("ArrayRecordComponent") // Made here, written once, never compared.
record Answer(
    int status,
    String template,
    Map<String, Object> model,
    boolean whole,
    String type,
    byte[] bytes,
    String location,
    String etag,
    @Nullable String session) {

  private static final byte[] NONE = {};

  Answer {
    model = Map.copyOf(model);
  }

  /** A page. */
  static Answer page(String template, Map<String, Object> model) {
    return new Answer(200, template, model, true, "", NONE, "", "", null);
  }

  /** A part of a page. */
  static Answer part(String template, Map<String, Object> model) {
    return new Answer(200, template, model, false, "", NONE, "", "", null);
  }

  /** Bytes that may hold something of a patient. */
  static Answer bytes(String type, byte[] bytes) {
    return new Answer(200, "", Map.of(), false, type, bytes, "", "", null);
  }

  /** Text of JSON. */
  static Answer json(String json) {
    return bytes("application/json", json.getBytes(StandardCharsets.UTF_8));
  }

  /** The program's own bytes, which every browser may keep. */
  static Answer ours(String type, byte[] bytes, String etag) {
    return new Answer(200, "", Map.of(), false, type, bytes, "", etag, null);
  }

  /** Leads to another page, to be asked with GET. */
  static Answer to(String location) {
    return new Answer(303, "", Map.of(), false, "", NONE, location, "", null);
  }

  /**
   * A refusal of the rooms behind the pages, as a page in words; said in the asker's language where
   * that is known.
   *
   * @param reason what was found in English, as a sentence without its full stop
   * @param advice what to do
   */
  static Answer refused(int status, String reason, String advice) {
    return refused(status, reason, advice, Language.ENGLISH);
  }

  /** A refusal in this language. */
  static Answer refused(int status, String reason, String advice, Language language) {
    return page(
            "refused",
            Map.of(
                "reason",
                reason,
                "spoken",
                language.tag(),
                "advice",
                advice,
                "spoken-advice",
                language.tag()))
        .with(status);
  }

  Answer with(int otherStatus) {
    return new Answer(otherStatus, template, model, whole, type, bytes, location, etag, session);
  }

  /** The same, beginning a session with this secret. */
  Answer beginning(String secret) {
    return new Answer(status, template, model, whole, type, bytes, location, etag, secret);
  }

  /** The same, ending the session. */
  Answer ending() {
    return beginning("");
  }
}
