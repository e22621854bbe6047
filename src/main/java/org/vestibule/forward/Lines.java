package org.vestibule.forward;

import java.util.function.Consumer;
import org.vestibule.base.Outcome;

/** The lines that lead out of the house to archives, and the one door for their reports. */
public interface Lines {

  /** A place where reports of storage commitment arrive, until it is closed. */
  interface Door extends AutoCloseable {
    /** The port on which it listens. */
    int port();

    @Override
    void close();
  }

  /**
   * The archive that the settings describe; nothing is sent yet.
   *
   * @return refused if the settings can't be followed, such as when a key file is missing
   */
  Outcome<Archive> archive(DestinationRules rules);

  /**
   * Listens for reports that come on an association of their own.
   *
   * @param turnedAway told in a sentence of everybody who was not let in; called by several threads
   * @return refused if the port is taken or the settings can't be followed
   */
  Outcome<Door> listen(ForwardRules rules, ReportSink reports, Consumer<String> turnedAway);
}
