package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
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
    int timed = args.length > 1 ? Integer.parseInt(args[1]) : 60;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 1;
    List<String> only = List.of(args).subList(Math.min(3, args.length), args.length);
    for (KillScenario scenario : KillScenario.values()) {
      if (!only.isEmpty() && !only.contains(scenario.name())) {
        continue;
      }
      if (scenario == KillScenario.BACKUP || scenario == KillScenario.RELEASE) {
        grid.runTimed(scenario, timed, seed);
      } else {
        grid.run(scenario);
      }
    }
    say(
        grid.kills
            + " kills, "
            + grid.recoveries
            + " recoveries, "
            + grid.failures.size()
            + " failures");
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

  /**
   * Killed at seeded shares of the time that the command takes: the same shares, not the same
   * points.
   */
  private void runTimed(KillScenario scenario, int times, long seed)
      throws IOException, InterruptedException {
    Path template = folder.resolve(scenario.name());
    scenario.layOut(template);
    Path counted = home(scenario, 0, false);
    KillScenario.copy(template, counted);
    KillScenario.Timed whole = scenario.child(counted, -1, folder.resolve(scenario + "-begun"));
    if (whole.code() != 0) {
      throw new IllegalStateException(Files.readString(counted.resolve("child.txt")));
    }
    Random random = new Random(seed);
    int dead = 0;
    for (int time = 1; time <= times; time++) {
      Path home = home(scenario, time, false);
      KillScenario.copy(template, home);
      long nanos = (long) (random.nextDouble() * whole.nanos());
      int code = scenario.child(home, nanos, folder.resolve(scenario + "-begun-" + time)).code();
      dead += code == 0 ? 0 : 1;
      goOn(scenario, home, false, time + " after " + nanos + " ns");
    }
    kills += dead;
    say(
        scenario
            + ": "
            + times
            + " times, seed "
            + seed
            + ", "
            + dead
            + " dead before the end, "
            + failures.size()
            + " failures so far");
  }

  /** One death, and two ways to go on after it. */
  private void kill(KillScenario scenario, Path template, int step, String name)
      throws IOException, InterruptedException {
    Path home = home(scenario, step, false);
    KillScenario.copy(template, home);
    kills++;
    int code = scenario.child(home, step);
    if (code != KillScenario.KILLED) {
      failed(scenario + " step " + step + " " + name + ": the child ended with " + code);
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
      failed(scenario + " step " + where + ": " + wrong);
    }
  }

  /** Said at once, since the whole run takes an hour. */
  private void failed(String what) {
    failures.add(what);
    say("  FAILED: " + what);
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
