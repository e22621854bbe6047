package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.PhotoWords;
import org.vestibule.flow.Practice;
import org.vestibule.flow.keeping.LedgerAsItIs;
import org.vestibule.flow.keeping.Orphan;
import org.vestibule.flow.keeping.Repair;
import org.vestibule.flow.keeping.RepairReport;
import org.vestibule.store.SecretFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Mends a store after damage, as far as nothing has to be guessed. */
@Command(
    name = "repair",
    description = {
      "Mend what can be mended without guessing: leftovers, the index, and objects of which a",
      "backup has a sound copy. Objects that the ledger doesn't know are listed for a person."
    })
final class RepairCommand extends PracticeCommand {

  @Option(
      names = "--from",
      paramLabel = "FOLDER",
      description = "A backup to take sound copies of damaged or missing objects from.")
  private @Nullable String from;

  @Option(names = "--dry-run", description = "Say what would be done, and change nothing.")
  private boolean dryRun;

  @Option(
      names = "--enter-objects",
      description = {
        "Enter sound objects that the ledger doesn't know again, as far as they say what they are;",
        "needs --by. Look at the list without this option first."
      })
  private boolean enterObjects;

  @Option(
      names = "--ledger-as-it-is",
      description = {
        "Take a ledger whose rows were damaged for what it says now, where no sound copy is left.",
        "It mends nothing; --by and --why are kept."
      })
  private boolean ledgerAsItIs;

  @Option(names = "--why", paramLabel = "WORDS", description = "Why; with --ledger-as-it-is.")
  private String why = "";

  @Mixin private PersonOption person = new PersonOption();

  RepairCommand(Surroundings surroundings) {
    super(surroundings);
  }

  /** A ledger that is gone is begun again, but only to enter what lies there. */
  @Override
  boolean mayBegin() {
    return enterObjects && !dryRun && Files.exists(home().resolve(SecretFile.NAME));
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    if (ledgerAsItIs) {
      ExitCode taken = takeAsItIs(practice);
      if (taken != ExitCode.DONE) {
        return taken;
      }
    }
    Path copies = from == null ? null : surroundings().path(from);
    Outcome<String> by = person.name(surroundings());
    if (enterObjects && by instanceof Refused<String> refused) {
      complain(refused);
      return ExitCode.WRONG_USE;
    }
    Outcome<RepairReport> repaired =
        Repair.run(practice, copies, dryRun, enterObjects ? by.orThrow() : null);
    if (repaired instanceof Refused<RepairReport> refused) {
      return refuse(refused);
    }
    RepairReport report = repaired.orThrow();
    done(report);
    orphans(report);
    new FindingsPrinter(console()).print(report.findings());
    return report.orphans().isEmpty() ? FindingsPrinter.end(report.findings()) : ExitCode.DAMAGE;
  }

  private ExitCode takeAsItIs(Practice practice) throws IOException {
    Outcome<String> by = person.name(surroundings());
    if (by instanceof Refused<String> refused) {
      complain(refused);
      return ExitCode.WRONG_USE;
    }
    if (why.isBlank() || dryRun) {
      console()
          .complain(
              dryRun
                  ? "vestibule: --ledger-as-it-is changes the ledger, so it can't be a dry run."
                  : "vestibule: --ledger-as-it-is needs a reason, which the ledger keeps.");
      console()
          .complain(
              dryRun
                  ? "  What to do: run verify; it says what is damaged."
                  : "  What to do: say it in a few words: --why \"no snapshot is left\".");
      return ExitCode.WRONG_USE;
    }
    Outcome<List<String>> taken = LedgerAsItIs.take(practice, by.orThrow(), why.strip());
    if (taken instanceof Refused<List<String>> refused) {
      return refuse(refused);
    }
    console().say("Taken as it is now, by " + by.orThrow() + ":");
    taken.orThrow().forEach(broken -> console().wrapped(2, broken + "."));
    console()
        .wrapped(
            0,
            "Nothing was mended by this: what those rows say may be wrong. Look at what they are"
                + " about.");
    return ExitCode.DONE;
  }

  private void done(RepairReport report) {
    if (dryRun) {
      console().say("This is what repair would do; nothing was changed.");
    }
    if (report.leftovers() > 0) {
      console().say("Leftovers of interrupted writes removed: " + report.leftovers() + ".");
    }
    if (!report.broughtBack().isEmpty()) {
      console()
          .say(
              Counted.of(report.broughtBack().size(), "object")
                  + " brought back from the backup, with the hash that the ledger knows:");
      report.broughtBack().forEach(uid -> console().say("  " + uid));
      console().say("Damaged files were set aside in set-aside, not deleted.");
    }
    if (report.reindexed()) {
      console().say("The index was made again from the ledger.");
    }
    if (!report.entered().isEmpty()) {
      console()
          .say(
              Counted.of(report.entered().size(), "photograph")
                  + " entered again from what the objects say:");
      report.entered().forEach(photo -> console().say("  " + photo));
      console()
          .wrapped(
              0,
              "The ledger says that they were read back, by whom and when. Who decided them first,"
                  + " whether they were rejected since, which consents were given and which copies"
                  + " or deliveries left the house is not in the objects: look at each photograph"
                  + " before it is used.");
    }
    if (report.leftovers() == 0
        && report.broughtBack().isEmpty()
        && report.entered().isEmpty()
        && !report.reindexed()) {
      console().say("There was nothing to mend.");
    }
  }

  private void orphans(RepairReport report) {
    if (report.orphans().isEmpty()) {
      return;
    }
    console().heading("Objects that the ledger doesn't know: " + report.orphans().size());
    console()
        .wrapped(
            0,
            "They are in no search. Their files don't say who decided what, whether they were"
                + " rejected or replaced later, what waited and why, or which consents were given and"
                + " which copies left the house: that stands in the ledger alone, and is not"
                + " restored.");
    report.orphans().forEach(this::orphan);
  }

  private void orphan(Orphan orphan) {
    console().gap();
    if (!orphan.fault().isEmpty()) {
      console().wrapped(0, orphan.uid() + ": " + Ended.of(orphan.fault()));
    } else {
      Table table = new Table("Object", orphan.uid());
      orphan.holds().stream()
          .filter(line -> !line.label().equals("Object"))
          .forEach((PhotoWords.Line line) -> table.row(line.label(), line.value()));
      table.lines(0).forEach(console()::say);
    }
    orphan.doubts().forEach(doubt -> console().wrapped(2, doubt));
    console().wrapped(2, "What to do: " + Ended.of(orphan.advice()));
  }
}
