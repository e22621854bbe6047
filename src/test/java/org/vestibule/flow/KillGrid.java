package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The full grid: each command is killed once at every write step that it reaches, in the order in
 * which it reaches them. What the dead process left goes on twice: with the same settings, and with
 * changed ones.
 */
public final class KillGrid {

  private final Path folder;
  private final List<String> failures = new ArrayList<>();
  private int kills;
  private int recoveries;

  private KillGrid(Path folder) {
    this.folder = folder;
  }

  /** The folder to work in, which must not exist yet. */
  public static void main(String[] args) throws Exception {
    KillGrid grid = new KillGrid(Files.createDirectories(Path.of(args[0])));
    for (KillScenario scenario : KillScenario.values()) {
      grid.run(scenario);
    }
    say(
        grid.kills
            + " kills, "
            + grid.recoveries
            + " recoveries, "
            + grid.failures.size()
            + " failures");
    grid.failures.forEach(KillGrid::say);
    System.exit(grid.failures.isEmpty() ? 0 : 1);
  }

  private void run(KillScenario scenario) throws IOException, InterruptedException {
    Path template = folder.resolve(scenario.name());
    scenario.layOut(template);
    Path counted = home(scenario, 0, false);
    KillScenario.copy(template, counted);
    if (scenario.child(counted, 0) != 0) {
      throw new IllegalStateException(Files.readString(counted.resolve("child.txt")));
    }
    List<String> steps = Files.readAllLines(counted.resolve("steps.txt"));
    say(scenario + ": " + steps.size() + " steps: " + counts(steps));
    for (int step = 1; step <= steps.size(); step++) {
      kill(scenario, template, step, steps.get(step - 1));
    }
    say("  " + steps.size() + " kills, " + failures.size() + " failures so far");
  }

  /** One death, and two ways to go on after it. */
  private void kill(KillScenario scenario, Path template, int step, String name)
      throws IOException, InterruptedException {
    Path home = home(scenario, step, false);
    KillScenario.copy(template, home);
    kills++;
    int code = scenario.child(home, step);
    if (code != KillScenario.KILLED) {
      failures.add(scenario + " step " + step + " " + name + ": the child ended with " + code);
      return;
    }
    Path changed = home(scenario, step, true);
    KillScenario.copy(home, changed);
    goOn(scenario, home, false, step + " " + name);
    goOn(scenario, changed, true, step + " " + name + ", settings changed");
  }

  private void goOn(KillScenario scenario, Path home, boolean changed, String where) {
    recoveries++;
    try {
      scenario.afterwards(home, changed);
    } catch (AssertionError | RuntimeException | IOException wrong) {
      failures.add(scenario + " step " + where + ": " + wrong);
    }
  }

  private Path home(KillScenario scenario, int step, boolean changed) {
    return folder.resolve(scenario + "-" + step + (changed ? "-changed" : ""));
  }

  private static Map<String, Long> counts(List<String> steps) {
    return steps.stream()
        .collect(Collectors.groupingBy(step -> step, TreeMap::new, Collectors.counting()));
  }

  private static void say(String line) {
    System.out.println(line);
  }
}
