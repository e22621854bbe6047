package org.vestibule.release;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.vestibule.deid.ProfileOption;

/** What is in a release and by which rules it was made, with the SHA-256 of each other file. */
final class Manifest {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private Manifest() {}

  /** The file's bytes; no key, and for copies without identity no day, receiver or practice. */
  static byte[] of(Order order, Map<String, String> hashes) {
    ObjectNode manifest = JSON.createObjectNode();
    manifest.put("release", order.id());
    manifest.put("purpose", order.purpose().key());
    if (order.purpose().named()) {
      manifest.put("identity", "named, with what the purpose needs");
      manifest.put("recipient", order.recipient());
      manifest.put("day", order.day().toString());
    } else {
      manifest.put("identity", "removed");
      manifest.put("profile", "DICOM PS3.15 Annex E Basic Application Level Confidentiality");
      ArrayNode options = manifest.putArray("options");
      order.purpose().options().stream().sorted().map(ProfileOption::words).forEach(options::add);
    }
    manifest.put("hash", "SHA-256");
    ObjectNode files = manifest.putObject("files");
    hashes.forEach(files::put);
    try {
      return (JSON.writeValueAsString(manifest).replace("\r\n", "\n") + "\n")
          .getBytes(StandardCharsets.UTF_8);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a manifest can't be written as JSON", e);
    }
  }
}
