package org.vestibule.cli;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.vestibule.cli.SettingsValues.WrongValue;
import org.vestibule.forward.DestinationRules;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.forward.DestinationRules.Line;
import org.vestibule.keys.TlsFiles;

/** Reads the tables {@code [[destination]]}: the archives that photographs go to. */
final class DestinationSettings {

  static final List<String> KEYS =
      List.of(
          "name",
          "speaks",
          "required",
          "host",
          "port",
          "called",
          "calling",
          "url",
          "certificate",
          "key",
          "password-file",
          "trust",
          "unprotected",
          "token-file",
          "confirm",
          "report-wait-minutes",
          "answer-seconds");

  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,31}");
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");

  private final Path home;

  DestinationSettings(Path home) {
    this.home = home;
  }

  List<DestinationRules> read(List<SettingsValues> tables) throws WrongValue {
    List<DestinationRules> all = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (SettingsValues table : tables) {
      DestinationRules one = read(table);
      if (!names.add(one.name())) {
        throw wrong("two [[destination]] have the name \"" + one.name() + "\"", "rename one");
      }
      all.add(one);
    }
    return all;
  }

  private DestinationRules read(SettingsValues table) throws WrongValue {
    String name = table.text("name", "");
    if (!NAME.matcher(name).matches()) {
      throw wrong(
          "a [[destination]] has the name \"" + name + "\"",
          "name it with small letters, digits and hyphens, such as \"archive\"");
    }
    boolean web = table.choice("speaks", false, Map.of("dicom", false, "dicomweb", true));
    return new DestinationRules(
        name,
        table.flag("required", true),
        web ? web(name, table) : dicom(name, table),
        confirm(name, table, web),
        Duration.ofMinutes(table.whole("report-wait-minutes", 10, 1, 1440)),
        Duration.ofSeconds(table.whole("answer-seconds", 60, 1, 3600)));
  }

  private static Confirm confirm(String name, SettingsValues table, boolean web) throws WrongValue {
    Confirm confirm =
        table.choice(
            "confirm",
            web ? Confirm.QUERY : Confirm.COMMITMENT,
            Map.of("commitment", Confirm.COMMITMENT, "query", Confirm.QUERY));
    if (web && confirm == Confirm.COMMITMENT) {
      throw wrong(
          "destination \"" + name + "\" is to confirm by commitment, and speaks dicomweb",
          "write confirm = \"query\"; storage commitment is asked for with speaks = \"dicom\"");
    }
    return confirm;
  }

  private Line dicom(String name, SettingsValues table) throws WrongValue {
    String host = table.text("host", "");
    String called = table.text("called", "");
    if (host.isBlank() || called.isBlank() || !table.has("port")) {
      throw wrong(
          "destination \"" + name + "\" lacks host, port or called",
          "ask who runs the archive for its host name, port and AE title");
    }
    return new DestinationRules.Dicom(
        host,
        table.whole("port", 104, 1, 65535),
        aeTitle("called", called),
        aeTitle("calling", table.text("calling", "VESTIBULE")),
        new TlsSettings(home, table, "").line("[[destination]]", false));
  }

  private Line web(String name, SettingsValues table) throws WrongValue {
    URI url = url(name, table.text("url", ""));
    boolean plain = url.getScheme().equals("http");
    boolean unprotected = table.flag("unprotected", false);
    if (plain && !unprotected && !LOOPBACK.contains(url.getHost())) {
      throw wrong(
          "destination \"" + name + "\" has an address without TLS (http)",
          "use https, or write unprotected = true if this network is trusted");
    }
    TlsSettings tls = new TlsSettings(home, table, "");
    TlsFiles files = tls.files();
    if (plain && !files.equals(TlsFiles.NONE)) {
      throw wrong(
          "destination \"" + name + "\" names files for TLS, and its address is http",
          "use https, or take them out");
    }
    return new DestinationRules.Web(url, files, tls.file("token-file"));
  }

  private static URI url(String name, String text) throws WrongValue {
    try {
      URI url = new URI(text);
      boolean fits =
          ("https".equals(url.getScheme()) || "http".equals(url.getScheme()))
              && url.getHost() != null
              && url.getUserInfo() == null
              && url.getQuery() == null
              && url.getFragment() == null;
      if (fits) {
        return url;
      }
    } catch (URISyntaxException e) {
      // said below
    }
    throw wrong(
        "destination \"" + name + "\" has the url \"" + text + "\"",
        "write the base address of the archive's DICOMweb services, such as"
            + " \"https://archive.example/dicom-web\"");
  }

  /** Up to 16 characters of the default repertoire without backslash (PS3.5 6.2). */
  static String aeTitle(String key, String title) throws WrongValue {
    boolean fits =
        !title.isBlank()
            && title.strip().length() <= 16
            && title.chars().allMatch(c -> c >= ' ' && c < 0x7F && c != '\\');
    if (!fits) {
      throw wrong(
          key + " is \"" + title + "\", which is no AE title",
          "write up to 16 letters, digits or spaces");
    }
    return title.strip();
  }

  private static WrongValue wrong(String reason, String advice) {
    return new WrongValue(SettingsFile.NAME + ": " + reason, advice);
  }
}
