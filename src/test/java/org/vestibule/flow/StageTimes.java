package org.vestibule.flow;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** Adds up what each stage of a run takes: of this thread's processor, and by the clock. */
final class StageTimes {

  private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

  /** One stage. */
  interface Work<T> {
    T run() throws IOException;
  }

  private final Map<String, long[]> nanos = new LinkedHashMap<>();

  <T> T of(String stage, Work<T> work) throws IOException {
    long wall = System.nanoTime();
    long cpu = CPU.getCurrentThreadCpuTime();
    T made = work.run();
    add(stage, wall, cpu);
    return made;
  }

  /** The same of what is done within another stage. */
  void during(String stage, Runnable work) {
    long wall = System.nanoTime();
    long cpu = CPU.getCurrentThreadCpuTime();
    work.run();
    add(stage, wall, cpu);
  }

  private void add(String stage, long wall, long cpu) {
    long[] sum = nanos.computeIfAbsent(stage, any -> new long[2]);
    sum[0] += CPU.getCurrentThreadCpuTime() - cpu;
    sum[1] += System.nanoTime() - wall;
  }

  /** What one stage did that is counted in another too is counted once. */
  void without(String stage, String part) {
    long[] whole = Objects.requireNonNull(nanos.get(stage), stage);
    long[] less = Objects.requireNonNull(nanos.get(part), part);
    whole[0] -= less[0];
    whole[1] -= less[1];
  }

  /** Each stage as {@code name=CPU ms:wall ms} for one of so many photographs. */
  String words(int photos) {
    StringBuilder out = new StringBuilder();
    nanos.forEach(
        (stage, sum) ->
            out.append(out.isEmpty() ? "" : "\t")
                .append(stage)
                .append(
                    String.format(
                        Locale.ROOT, "=%.3f:%.3f", sum[0] / 1e6 / photos, sum[1] / 1e6 / photos)));
    return out.toString();
  }
}
