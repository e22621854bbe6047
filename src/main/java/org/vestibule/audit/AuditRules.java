package org.vestibule.audit;

import java.util.Optional;
import org.vestibule.keys.TlsFiles;

/**
 * What a practice has settled about audit messages.
 *
 * @param on true if messages are written at all
 * @param source this installation's name in the site's audit repository
 * @param site the site's name; empty if not said
 * @param syslog where they are sent besides; empty if they stay in the home folder
 */
public record AuditRules(boolean on, String source, String site, Optional<Syslog> syslog) {

  /** Nothing is written. */
  public static final AuditRules NONE = new AuditRules(false, "vestibule", "", Optional.empty());

  /**
   * A syslog server.
   *
   * @param tls whom we trust there and who we are; empty for UDP, which anybody on the way can read
   */
  public record Syslog(String host, int port, Optional<TlsFiles> tls) {}
}
