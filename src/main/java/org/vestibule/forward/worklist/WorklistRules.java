package org.vestibule.forward.worklist;

import java.time.Duration;
import java.util.Optional;
import org.vestibule.keys.TlsFiles;

/**
 * What a practice has settled about the worklist.
 *
 * @param host where it is; empty if there is none
 * @param called its AE title
 * @param calling ours
 * @param tls whom we trust there and who we are; empty only where the settings say in words that
 *     the line is plain
 * @param station the scheduled station's AE title that is asked for; empty for all
 * @param modality the scheduled modality that is asked for; empty for all
 * @param length how long a visit lasts, which a worklist doesn't say
 */
public record WorklistRules(
    String host,
    int port,
    String called,
    String calling,
    Optional<TlsFiles> tls,
    String station,
    String modality,
    Duration length) {

  /** There is no worklist. */
  public static final WorklistRules NONE =
      new WorklistRules(
          "", 104, "", "VESTIBULE", Optional.empty(), "", "XC", Duration.ofMinutes(60));

  /** True if there is a worklist to ask. */
  public boolean isThere() {
    return !host.isEmpty();
  }
}
