package org.vestibule.flow;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/**
 * A process that runs a command and is dead the moment it reaches the chosen write step, or lives
 * and writes down which steps there were, in order, into {@code steps.txt} of the home folder.
 */
public final class KilledRun {

  private KilledRun() {}

  /**
   * The scenario, the home folder, the step's number from 1; 0 to live; and a file that is made
   * when the command begins.
   */
  public static void main(String[] args) throws Exception {
    KillScenario scenario = KillScenario.valueOf(args[0]);
    Path home = Path.of(args[1]);
    int fatal = Integer.parseInt(args[2]);
    List<String> reached = new ArrayList<>();
    WriteSteps steps =
        (WriteStep step) -> {
          reached.add(step.name());
          if (reached.size() == fatal) {
            Runtime.getRuntime().halt(KillScenario.KILLED);
          }
        };
    SmallPractice small = SmallPractice.at(home);
    try (Practice practice = small.open(small.settings(), steps)) {
      if (args.length > 3 && !args[3].isEmpty()) {
        Files.createFile(Path.of(args[3]));
      }
      // Opening a ledger may write: those steps count too.
      scenario.run(small, practice);
    }
    Files.write(home.resolve("steps.txt"), reached);
  }
}
