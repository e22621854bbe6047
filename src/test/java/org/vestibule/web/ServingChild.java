package org.vestibule.web;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.WebRules;

/** A process that serves a practice's pages until it is killed. */
public final class ServingChild {

  private ServingChild() {}

  /** The home folder; the first line that is printed is the port. */
  public static void main(String[] args) throws Exception {
    Path home = Path.of(args[0]);
    Settings settings = Settings.defaults(home, SampleSite.ZONE);
    try (Practice practice = Practice.open(home, settings, SampleSite.CLOCK, false).orThrow();
        Server server =
            ServerStart.start(practice, WebRules.DEFAULT.at(0), said -> {}, failure -> {})
                .orThrow()) {
      System.out.write((server.port() + "\n").getBytes(StandardCharsets.US_ASCII));
      System.out.flush();
      new CountDownLatch(1).await();
    }
  }
}
