package org.vestibule.web;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The one step by which a device learns to trust the practice's own certificate. Since it is not
 * trusted before, this page alone is served without TLS; nothing of a patient is on it.
 */
final class TrustPage {

  /** All that may be asked for without TLS where the server has a certificate of its own. */
  static final Set<String> PLAIN =
      Set.of("/trust", "/trust/vestibule.crt", "/assets/look.css", "/assets/mark.svg");

  private final Site site;

  TrustPage(Site site) {
    this.site = site;
  }

  Answer page(Asked asked) {
    Optional<Trust> trust = site.trust();
    if (trust.isEmpty()) {
      return Answers.refused(asked, 409, "trust-none");
    }
    String title = PageWords.of(asked.language()).say("trust-title");
    return Answer.page(
        "trust", Map.of("title", title, "fingerprint", trust.get().fingerprint(), "plain", true));
  }

  /** The certificate, to be downloaded (RFC 2585 names the type for such files). */
  Answer certificate(Asked asked) {
    Optional<Trust> trust = site.trust();
    return trust.isEmpty()
        ? Answers.refused(asked, 409, "trust-none")
        : Answer.bytes(
            "application/x-x509-ca-cert", trust.get().pem().getBytes(StandardCharsets.US_ASCII));
  }
}
