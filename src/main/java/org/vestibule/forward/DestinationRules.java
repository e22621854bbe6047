package org.vestibule.forward;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.vestibule.keys.TlsFiles;

/**
 * One archive, as the settings say it.
 *
 * @param name how people here call it; stands in the ledger
 * @param required true if a photograph counts as delivered only once this one has confirmed it
 * @param line how it is spoken with
 * @param confirm what counts as confirmed
 * @param reportWait how long a report of storage commitment may take before it is asked for again
 * @param answerWait how long any single answer may take
 */
public record DestinationRules(
    String name,
    boolean required,
    Line line,
    Confirm confirm,
    Duration reportWait,
    Duration answerWait) {

  /** What counts as confirmed. */
  public enum Confirm {
    /** The archive's report that it takes responsibility; where none comes, a query. */
    COMMITMENT,
    /** The archive shows the object when asked. */
    QUERY
  }

  /** How an archive is spoken with. */
  public sealed interface Line {}

  /**
   * DICOM's own protocol (PS3.8).
   *
   * @param called AE title of the archive
   * @param calling our AE title
   * @param tls files for TLS; empty only where the settings say in words that the line is plain
   */
  public record Dicom(String host, int port, String called, String calling, Optional<TlsFiles> tls)
      implements Line {}

  /**
   * DICOMweb (PS3.18).
   *
   * @param service base address of the services, such as {@code https://archive.example/dicom-web}
   * @param tls trust and, if the archive asks for it, our certificate
   * @param tokenFile a file whose first line is the bearer token
   */
  public record Web(URI service, TlsFiles tls, Optional<Path> tokenFile) implements Line {}
}
