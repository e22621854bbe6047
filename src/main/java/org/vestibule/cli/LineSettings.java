package org.vestibule.cli;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.vestibule.audit.AuditRules;
import org.vestibule.cli.SettingsValues.WrongValue;
import org.vestibule.forward.worklist.WorklistRules;
import org.vestibule.keys.TlsFiles;

/** Reads what the settings say about the audit repository and the worklist. */
final class LineSettings {

  private static final int LAST_PORT = 65_535;
  private static final int SYSLOG_TLS_PORT = 6514;

  private final Path home;
  private final SettingsValues values;

  LineSettings(Path home, SettingsValues values) {
    this.home = home;
    this.values = values;
  }

  AuditRules audit(AuditRules base) throws WrongValue {
    String server = values.text("audit.server", "");
    boolean on = values.flag("audit.on", base.on());
    if (!server.isEmpty() && !on) {
      throw new WrongValue(
          SettingsFile.NAME + ": [audit] names a server, but \"on\" is not true",
          "write on = true, or leave the server out");
    }
    Optional<AuditRules.Syslog> syslog =
        server.isEmpty()
            ? Optional.empty()
            : Optional.of(
                new AuditRules.Syslog(
                    server,
                    values.whole("audit.port", SYSLOG_TLS_PORT, 1, LAST_PORT),
                    line("audit", Map.of("tls", true, "plain udp", false))));
    return new AuditRules(
        on,
        values.text("audit.source", base.source()),
        values.text("audit.site", base.site()),
        syslog);
  }

  WorklistRules worklist(WorklistRules base) throws WrongValue {
    String host = values.text("worklist.host", base.host());
    String called = values.text("worklist.title", base.called());
    if (host.isEmpty() != called.isEmpty()) {
      throw new WrongValue(
          SettingsFile.NAME + ": [worklist] lacks \"host\" or \"title\"",
          "name both, as the worklist's administrator gave them");
    }
    return new WorklistRules(
        host,
        values.whole("worklist.port", base.port(), 1, LAST_PORT),
        called,
        values.text("worklist.our-title", base.calling()),
        host.isEmpty() ? Optional.empty() : line("worklist", Map.of("tls", true, "plain", false)),
        values.text("worklist.station", base.station()),
        values.text("worklist.modality", base.modality()),
        values.minutes("worklist.visit-minutes", base.length()));
  }

  /** TLS unless the settings say in words that the line is plain. */
  private Optional<TlsFiles> line(String table, Map<String, Boolean> lines) throws WrongValue {
    if (!values.choice(table + ".line", true, lines)) {
      return Optional.empty();
    }
    return Optional.of(
        new TlsFiles(
            file(table + ".certificate"),
            file(table + ".key"),
            file(table + ".password-file"),
            file(table + ".trusted")));
  }

  private Optional<Path> file(String key) throws WrongValue {
    String written = values.text(key, "");
    return written.isEmpty() ? Optional.empty() : Optional.of(home.resolve(written));
  }
}
