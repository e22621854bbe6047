package org.vestibule.flow.night;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.flow.look.Say;
import org.vestibule.flow.night.NightReport.Stopped;
import org.vestibule.store.Finding;

/** A night in a few lines for people. They count; they name no patient and no file. */
public final class NightWords {

  private NightWords() {}

  /** One thing after the other, the most important first. */
  public static List<String> lines(NightReport report) {
    List<String> lines = new ArrayList<>();
    lines.add(ending(report));
    report.whyStopped().ifPresent(stopped -> stopped(stopped, lines));
    report.takenIn().ifPresent(ingest -> takenIn(ingest, lines));
    lines.add(
        report.waiting() == 0
            ? "Nothing waits for a person."
            : counted(report.waiting(), "photograph")
                + (report.waiting() == 1 ? " waits" : " wait")
                + " for a person; \"vestibule waiting\" says which, why, and what to do.");
    lines.add(counted(report.verified(), "object") + " read again, as the share of this night.");
    for (Finding finding : report.findings()) {
      if (finding.asksForAPerson()) {
        lines.add(Say.sentence(finding.what()) + " What to do: " + finding.advice() + ".");
      }
    }
    report.copyMade().ifPresent(backup -> backup(backup, lines));
    report.delivered().ifPresent(delivery -> delivered(delivery, lines));
    report.warnings().forEach(warning -> lines.add(Say.sentence(warning)));
    return lines;
  }

  /** How the night ended, in a sentence. */
  static String ending(NightReport report) {
    return switch (report.ending()) {
      case DONE -> "The night is done, and nothing needs a person.";
      case NEEDS_A_PERSON -> "The night is done, and something needs a person.";
      case REFUSED -> "The night could not do its work.";
      case BUSY -> "The night could not take anything in: another run was at work all the time.";
      case NO_BACKUP -> "The night is done, but THERE IS NO BACKUP OF IT.";
      case MACHINE -> "The night did not begin: the machine is not ready for it.";
      case DAMAGE -> "SOMETHING THAT IS STORED IS DAMAGED OR MISSING.";
    };
  }

  private static void stopped(Stopped stopped, List<String> lines) {
    lines.add(Say.sentence(stopped.reason()) + " What to do: " + stopped.advice() + ".");
  }

  private static void takenIn(IngestReport ingest, List<String> lines) {
    lines.add(
        counted(ingest.filed().size(), "photograph")
            + " filed, "
            + ingest.cards().size()
            + " of cards.");
    long aside = ingest.leftOut().stream().filter(file -> file.kind().needsPerson()).count();
    if (aside > 0) {
      lines.add(counted((int) aside, "file") + " could not be taken as a photograph.");
    }
    if (!ingest.defects().isEmpty()) {
      lines.add(
          "The program failed on "
              + counted(ingest.defects().size(), "photograph")
              + "; please report that.");
    }
    if (!ingest.concerns().isEmpty()) {
      lines.add(
          counted(ingest.concerns().size(), "thing")
              + " about lists, cards or files should be looked into; \"vestibule ingest\" says"
              + " what.");
    }
  }

  private static void backup(NightReport.CopyMade backup, List<String> lines) {
    if (!backup.isMade()) {
      lines.add(
          "The backup was not made: "
              + backup.failure()
              + ". What to do: "
              + backup.advice()
              + ".");
      return;
    }
    lines.add(
        "The backup was made: "
            + counted(backup.objects(), "object")
            + ", "
            + backup.copied()
            + " of them copied now.");
    for (Finding finding : backup.findings()) {
      lines.add(Say.sentence(finding.what()) + " What to do: " + finding.advice() + ".");
    }
  }

  private static void delivered(DeliveryReport delivery, List<String> lines) {
    for (DeliveryReport.OfDestination one : delivery.destinations()) {
      lines.add(
          counted(one.confirmedNow(), "object")
              + " confirmed by "
              + one.name()
              + " this night, "
              + one.open()
              + " still on the way or kept back.");
      one.left()
          .ifPresent(
              why ->
                  lines.add(
                      Say.sentence(one.name() + " was left early: " + why.reason())
                          + " What to do: "
                          + why.advice()
                          + "."));
      if (one.deadEnds() > 0) {
        lines.add(
            counted(one.deadEnds(), "object")
                + (one.deadEnds() == 1 ? " needs" : " need")
                + " a person at "
                + one.name()
                + "; \"vestibule forward list\" says which, and why.");
      }
    }
    if (delivery.removed() > 0) {
      lines.add(
          counted(delivery.removed(), "file") + " left the inbox, confirmed by every archive.");
    }
  }

  private static String counted(int count, String thing) {
    return count + " " + thing + (count == 1 ? "" : "s");
  }
}
