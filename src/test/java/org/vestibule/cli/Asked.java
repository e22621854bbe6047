package org.vestibule.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.vestibule.flow.TestHome;

/** A command that was asked for in this process: how it ended and what it printed where. */
record Asked(int code, String out, String err) {

  /** Asks in this folder, with this environment. */
  static Asked in(Path folder, Map<String, String> environment, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    int code =
        new Launcher(new Surroundings(console, environment, folder, TestHome.CLOCK, TestHome.ZONE))
            .run(args);
    return new Asked(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** Asks with an option for the home folder behind the command's words. */
  static Asked of(TestHome home, String... args) {
    List<String> all = new ArrayList<>(List.of(args));
    all.add("--home");
    all.add(home.folder().toString());
    return in(home.folder(), Map.of(), all.toArray(String[]::new));
  }

  /** The same by a person. */
  static Asked by(String person, TestHome home, String... args) {
    List<String> all = new ArrayList<>(List.of(args));
    all.add("--by");
    all.add(person);
    return of(home, all.toArray(String[]::new));
  }
}
