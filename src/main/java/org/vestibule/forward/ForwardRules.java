package org.vestibule.forward;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.vestibule.keys.TlsFiles;

/**
 * What a practice has settled about delivery.
 *
 * @param destinations in the order of the settings; without one, nothing is delivered
 * @param firstPause before an object is sent again; each further pause is twice as long
 * @param longestPause no pause is longer
 * @param attempts after so many an object is left to a person
 * @param limit how long one run may take
 * @param reports the port on which later reports of storage commitment arrive; empty if none
 * @param removal when sources may leave the inbox
 */
public record ForwardRules(
    List<DestinationRules> destinations,
    Duration firstPause,
    Duration longestPause,
    int attempts,
    Duration limit,
    Optional<ReportPort> reports,
    SourceRemoval removal) {

  /**
   * Where later reports arrive.
   *
   * @param title our AE title, as the archives know it
   * @param tls our certificate and whom we trust; empty only where the settings say in words that
   *     the line is plain
   */
  public record ReportPort(int port, String title, Optional<TlsFiles> tls) {}

  /** When sources may leave the inbox. */
  public enum SourceRemoval {
    /** They stay where they are. */
    NEVER,
    /** Once every required destination has confirmed whatever was made from them. */
    CONFIRMED
  }

  /** Nothing is delivered and nothing is removed. */
  public static final ForwardRules NONE =
      new ForwardRules(
          List.of(),
          Duration.ofMinutes(5),
          Duration.ofHours(6),
          10,
          Duration.ofMinutes(120),
          Optional.empty(),
          SourceRemoval.NEVER);

  public ForwardRules {
    destinations = List.copyOf(destinations);
  }
}
