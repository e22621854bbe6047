package org.vestibule.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.vestibule.cli.SettingsValues.WrongValue;
import org.vestibule.forward.DestinationRules;
import org.vestibule.forward.ForwardRules;
import org.vestibule.forward.ForwardRules.ReportPort;
import org.vestibule.forward.ForwardRules.SourceRemoval;

/** What the settings say about delivery as a whole, and about sources that leave the inbox. */
final class ForwardSettings {

  static final List<String> KEYS =
      List.of(
          "forward.attempts",
          "forward.first-pause-minutes",
          "forward.longest-pause-minutes",
          "forward.limit-minutes",
          "forward.report-port",
          "forward.report-title",
          "forward.certificate",
          "forward.key",
          "forward.password-file",
          "forward.trust",
          "forward.unprotected",
          "inbox.remove-confirmed",
          "inbox.synced-both-ways",
          "inbox.remove-even-if-synced");

  private final Path home;
  private final SettingsValues values;

  ForwardSettings(Path home, SettingsValues values) {
    this.home = home;
    this.values = values;
  }

  ForwardRules read(List<DestinationRules> destinations) throws WrongValue {
    ForwardRules base = ForwardRules.NONE;
    Duration first = minutes("forward.first-pause-minutes", base.firstPause());
    Duration longest = minutes("forward.longest-pause-minutes", base.longestPause());
    if (longest.compareTo(first) < 0) {
      throw new WrongValue(
          SettingsFile.NAME + ": forward.longest-pause-minutes is shorter than the first pause",
          "make it as long at least");
    }
    return new ForwardRules(
        destinations,
        first,
        longest,
        values.whole("forward.attempts", base.attempts(), 1, 1000),
        minutes("forward.limit-minutes", base.limit()),
        reportPort(),
        removal(!destinations.isEmpty()));
  }

  private Duration minutes(String key, Duration otherwise) throws WrongValue {
    return Duration.ofMinutes(values.whole(key, (int) otherwise.toMinutes(), 1, 1440));
  }

  private Optional<ReportPort> reportPort() throws WrongValue {
    int port = values.whole("forward.report-port", 0, 0, 65_535);
    if (port == 0) {
      return Optional.empty();
    }
    String title = values.text("forward.report-title", "VESTIBULE");
    return Optional.of(
        new ReportPort(
            port,
            DestinationSettings.aeTitle("forward.report-title", title),
            new TlsSettings(home, values, "forward.").line("[forward]", true)));
  }

  /** A folder whose deletions travel may hold the phone's only copy. */
  private SourceRemoval removal(boolean anywhere) throws WrongValue {
    if (!values.flag("inbox.remove-confirmed", false)) {
      return SourceRemoval.NEVER;
    }
    if (!anywhere) {
      throw new WrongValue(
          SettingsFile.NAME + ": inbox.remove-confirmed is true, but there is no [[destination]]",
          "name the archive that is to confirm photographs, or take the line out");
    }
    if (values.flag("inbox.synced-both-ways", false)
        && !values.flag("inbox.remove-even-if-synced", false)) {
      throw new WrongValue(
          SettingsFile.NAME
              + ": the inbox is synchronised both ways, so what is removed there may vanish from the"
              + " phone too, and that may be the only other copy",
          "take inbox.remove-confirmed out, or say that you want it all the same with"
              + " inbox.remove-even-if-synced = true");
    }
    return SourceRemoval.CONFIRMED;
  }
}
