package org.vestibule.flow.delivering;

import java.util.random.RandomGenerator;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.forward.Courier;
import org.vestibule.forward.ForwardRules;
import org.vestibule.forward.Lines;

/** Listens for what archives report later, and writes it into the ledger. */
public final class ReportDoors {

  /** Nobody listens. */
  public static final Lines.Door NONE =
      new Lines.Door() {
        @Override
        public int port() {
          return 0;
        }

        @Override
        public void close() {
          // nothing was opened
        }
      };

  private ReportDoors() {}

  /**
   * Listens until it is closed, as the settings say.
   *
   * @param turnedAway told of everybody who was not let in
   * @return a door that nobody stands behind if the settings name no port; refused if the port
   *     can't be had
   */
  public static Outcome<Lines.Door> open(
      Practice practice, Lines lines, RandomGenerator random, TurnedAway turnedAway) {
    ForwardRules rules = practice.settings().forward();
    return rules.reports().isEmpty()
        ? Outcome.done(NONE)
        : lines.listen(
            rules,
            Courier.reports(
                practice.store().ledger(), rules, "archive's report", practice.clock(), random),
            turnedAway);
  }
}
