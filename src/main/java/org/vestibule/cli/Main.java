package org.vestibule.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;

/** Starts the command line and ends the process with its exit code. */
public final class Main {

  private Main() {}

  public static void main(String[] args) {
    Console console =
        new Console(
            System.out, System.err, System.getProperty("vestibule.terminal", "").equals("yes"));
    Surroundings surroundings =
        new Surroundings(
            console, System.getenv(), Path.of(""), Clock.systemUTC(), ZoneId.systemDefault());
    int code = new Launcher(surroundings).run(args);
    StartArchive.dropIfOfNoUse(
        System.getProperty("vestibule.archive"), System.getProperty("java.vm.info", ""));
    System.exit(code);
  }
}
