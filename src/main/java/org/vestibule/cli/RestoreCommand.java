package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.keeping.Restore;
import org.vestibule.flow.keeping.RestoreLedger;
import org.vestibule.flow.keeping.RestoreRequest;
import org.vestibule.flow.keeping.RestoreSource;
import org.vestibule.flow.keeping.Restored;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Brings a practice back from a backup. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Bring a practice back from a backup into a new home folder, make its index again and",
      "re-read everything. Or, with --ledger-only, put a sound ledger in a damaged one's place."
    })
final class RestoreCommand implements Callable<Integer> {

  private final Surroundings surroundings;

  @Mixin private HomeOption home = new HomeOption();

  @Option(
      names = "--from",
      paramLabel = "FOLDER",
      required = true,
      description = "The folder that backup wrote.")
  private String from = "";

  @Option(
      names = "--secret",
      paramLabel = "FILE",
      description = "The copy of practice.secret that was kept apart.")
  private @Nullable String secret;

  @Option(
      names = "--snapshot",
      paramLabel = "NAME",
      description = "A moment from the backup's folder snapshots; otherwise the newest.")
  private @Nullable String snapshot;

  @Option(
      names = "--ledger-only",
      description = "Bring back the ledger alone; the damaged one is set aside, not deleted.")
  private boolean ledgerOnly;

  RestoreCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws IOException {
    Path to = home.in(surroundings);
    if (secret == null && !ledgerOnly) {
      complain(
          new Refused<>(
              "the practice's secret is missing, and a backup does not hold it",
              "name the copy that was kept apart, with --secret FILE"));
      return ExitCode.WRONG_USE.number();
    }
    Path secretFile = secret == null ? to.resolve("practice.secret") : surroundings.path(secret);
    RestoreRequest request = new RestoreRequest(surroundings.path(from), snapshot, secretFile, to);
    if (ledgerOnly && !Practice.isBegun(to)) {
      return refuse(
          new Refused<>(
              "there is no ledger in that home folder to put another in its place",
              "leave --ledger-only out, and name a new folder with --home"));
    }
    Outcome<RestoreSource> source = RestoreSource.find(request);
    if (source instanceof Refused<RestoreSource> refused) {
      return refuse(refused);
    }
    return restore(source.orThrow(), request);
  }

  private int restore(RestoreSource source, RestoreRequest request) throws IOException {
    Path to = request.home();
    Path settingsIn = ledgerOnly ? to : source.folder();
    Outcome<Settings> settings = SettingsFile.read(settingsIn, to, surroundings.zone());
    if (settings instanceof Refused<Settings> refused) {
      complain(refused);
      return ExitCode.WRONG_USE.number();
    }
    Outcome<Restored> done =
        ledgerOnly
            ? RestoreLedger.run(source, to, settings.orThrow(), surroundings.clock())
            : Restore.run(source, request, settings.orThrow(), surroundings.clock());
    return done instanceof Refused<Restored> refused ? refuse(refused) : say(done.orThrow());
  }

  private int say(Restored restored) {
    Console console = surroundings.console();
    console.wrapped(
        0,
        "Brought back snapshot "
            + restored.snapshot()
            + (ledgerOnly
                ? ", the ledger alone"
                : " and " + Counted.of(restored.objects(), "object"))
            + "; the index was made again, and everything was read again.");
    restored.notes().forEach(note -> console.wrapped(0, note));
    if (restored.findings().isEmpty()) {
      console.say("Everything is as it was kept.");
    }
    new FindingsPrinter(console).print(restored.findings());
    return FindingsPrinter.end(restored.findings()).number();
  }

  private void complain(Refused<?> refused) {
    surroundings.console().complain("vestibule: " + refused.reason() + ".");
    surroundings.console().complain("  What to do: " + Ended.of(refused.advice()));
  }

  private int refuse(Refused<?> refused) {
    complain(refused);
    return ExitCode.of(refused.kind()).number();
  }
}
