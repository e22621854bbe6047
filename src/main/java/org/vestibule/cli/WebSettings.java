package org.vestibule.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.vestibule.cli.SettingsValues.WrongValue;
import org.vestibule.flow.WebRules;
import org.vestibule.keys.TlsFiles;

/** Reads what the settings say about the pages. */
final class WebSettings {

  private static final int LAST_PORT = 65_535;

  private final Path home;
  private final SettingsValues values;

  WebSettings(Path home, SettingsValues values) {
    this.home = home;
    this.values = values;
  }

  WebRules read(WebRules base) throws WrongValue {
    return new WebRules(
        values.text("web.address", base.address()),
        values.whole("web.port", base.port(), 0, LAST_PORT),
        values.texts("web.names"),
        values.choice(
            "web.tls",
            base.tls(),
            Map.of(
                "none", WebRules.Tls.NONE,
                "own", WebRules.Tls.OWN,
                "file", WebRules.Tls.FILE,
                "proxy", WebRules.Tls.PROXY)),
        new TlsFiles(
            file("web.certificate"), file("web.key"), file("web.password-file"), Optional.empty()),
        values.text("web.proxy-header", base.proxyHeader()),
        values.minutes("web.idle-minutes", base.idle()),
        Duration.ofHours(
            values.whole("web.longest-hours", (int) base.longest().toHours(), 1, 720)));
  }

  private Optional<Path> file(String key) throws WrongValue {
    String written = values.text(key, "");
    return written.isEmpty() ? Optional.empty() : Optional.of(home.resolve(written));
  }
}
