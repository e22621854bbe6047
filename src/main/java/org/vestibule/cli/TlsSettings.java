package org.vestibule.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.vestibule.cli.SettingsValues.WrongValue;
import org.vestibule.keys.TlsFiles;

/** The files of a TLS connection as one table of the settings names them. */
final class TlsSettings {

  private final Path home;
  private final SettingsValues values;
  private final String prefix;

  TlsSettings(Path home, SettingsValues values, String prefix) {
    this.home = home;
    this.values = values;
    this.prefix = prefix;
  }

  TlsFiles files() throws WrongValue {
    return new TlsFiles(file("certificate"), file("key"), file("password-file"), file("trust"));
  }

  /**
   * The files, or nothing where the settings say in words that the line is not protected.
   *
   * @param table as the settings write it
   * @param called true if this is the side that is called, which needs a certificate
   */
  Optional<TlsFiles> line(String table, boolean called) throws WrongValue {
    boolean unprotected = values.flag(prefix + "unprotected", false);
    TlsFiles files = files();
    if (unprotected && !files.equals(TlsFiles.NONE)) {
      throw new WrongValue(
          SettingsFile.NAME + ": a " + table + " is unprotected and names files for TLS",
          "take one of the two out");
    }
    if (!unprotected && called && files.identity().isEmpty()) {
      throw new WrongValue(
          SettingsFile.NAME + ": " + table + " has a report-port but no certificate",
          "name certificate and key, or write unprotected = true if this network is trusted");
    }
    return unprotected ? Optional.empty() : Optional.of(files);
  }

  Optional<Path> file(String key) throws WrongValue {
    String name = values.text(prefix + key, "");
    return name.isBlank() ? Optional.empty() : Optional.of(home.resolve(name));
  }
}
