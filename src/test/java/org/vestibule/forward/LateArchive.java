package org.vestibule.forward;

import java.io.IOException;
import java.util.List;

/**
 * An archive that stores, takes requests for storage commitment, hangs up, and reports when a test
 * says so, on an association of its own (PS3.4 J.3.3).
 */
public final class LateArchive implements AutoCloseable {

  private final FindPeer peer;

  /** Begins to listen on this computer; it is called ARCHIVE. */
  public LateArchive() throws IOException {
    peer = new FindPeer(false, question -> new FindPeer.Matches(0, List.of()));
    peer.reportsLater = true;
  }

  public int port() {
    return peer.port();
  }

  /** How many reports are still to come. */
  public int unreported() {
    return peer.unreported.size();
  }

  /**
   * Reports that it keeps what it was asked for first.
   *
   * @param port our door for reports
   * @return the status that it was answered with
   */
  public int report(int port) throws IOException {
    return peer.reportTo(port);
  }

  @Override
  public void close() throws IOException {
    peer.close();
  }
}
