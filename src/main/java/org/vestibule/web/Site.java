package org.vestibule.web;

import java.io.IOException;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Consumer;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Browse;
import org.vestibule.flow.MadePictures;
import org.vestibule.flow.PageAudit;
import org.vestibule.flow.Practice;
import org.vestibule.flow.WebRules;
import org.vestibule.flow.phone.Receiving;
import org.vestibule.flow.phone.UploadRules;
import org.vestibule.store.index.IndexRecord;

/** What every page works with. All of it may be used by several threads at once. */
final class Site {

  private final Practice practice;
  private final WebRules rules;
  private final Secrets secrets;
  private final Sittings sittings;
  private final OpeningLink opening;
  private final PhotoKeys photoKeys;
  private final Consumer<String> console;
  private final Optional<Trust> trust;
  private final Receiving receiving;
  private final MadePictures made = new MadePictures();
  private volatile int port;
  private volatile int plainPort;

  Site(Practice practice, WebRules rules, Clock clock, Consumer<String> console) {
    this(practice, rules, clock, console, Optional.empty());
  }

  /**
   * The same.
   *
   * @param trust the practice's own certificate
   */
  Site(
      Practice practice,
      WebRules rules,
      Clock clock,
      Consumer<String> console,
      Optional<Trust> trust) {
    this.practice = practice;
    this.rules = rules;
    this.secrets = new Secrets(new SecureRandom());
    this.sittings =
        new Sittings(
            practice.store().ledger().sessions(),
            rules,
            clock,
            secrets,
            new PageAudit(practice)::ranOut);
    this.opening = new OpeningLink(secrets);
    this.photoKeys = new PhotoKeys(practice);
    this.console = console;
    this.trust = trust;
    this.receiving = new Receiving(practice, UploadRules.DEFAULT);
  }

  Practice practice() {
    return practice;
  }

  WebRules rules() {
    return rules;
  }

  Secrets secrets() {
    return secrets;
  }

  Sittings sittings() {
    return sittings;
  }

  OpeningLink opening() {
    return opening;
  }

  PhotoKeys photoKeys() {
    return photoKeys;
  }

  /** The filed photograph of which a page says this key; empty if there is none. */
  Optional<IndexRecord> filed(String key) throws IOException {
    Optional<ContentHash> photo = photoKeys.find(key);
    return photo.isEmpty()
        ? Optional.empty()
        : new Browse(practice).find(photo.get()).filter(IndexRecord::filed);
  }

  /** Tells whoever runs the server; never anything of a patient. */
  Consumer<String> console() {
    return console;
  }

  void listensAt(int listening, int listeningPlainly) {
    port = listening;
    plainPort = listeningPlainly;
  }

  /** Where a browser finds it: the first name that is settled, else the address. */
  String address() {
    return address(rules, port);
  }

  /** The same for a server that is not started. */
  static String address(WebRules rules, int port) {
    String host = rules.names().isEmpty() ? Hosts.bracketed(rules.address()) : rules.names().get(0);
    boolean secure = rules.tls() != WebRules.Tls.NONE;
    return rules.tls() == WebRules.Tls.PROXY
        ? "https://" + host
        : (secure ? "https://" : "http://") + host + ":" + port;
  }

  /** The practice's own certificate, where it has one. */
  Optional<Trust> trust() {
    return trust;
  }

  /** Where a device finds the certificate before it trusts it. */
  String trustAddress() {
    String host = rules.names().isEmpty() ? Hosts.bracketed(rules.address()) : rules.names().get(0);
    return "http://" + host + ":" + plainPort + "/trust";
  }

  /** Takes files from phones. */
  Receiving receiving() {
    return receiving;
  }

  /** Bounds how many pictures are made at once. */
  MadePictures made() {
    return made;
  }

  /** True if other machines, such as phones, can ask at all. */
  boolean isReachable() {
    return ShareLinks.isReachable(rules);
  }

  /** True if somebody has to sign in; otherwise the opening link lets in. */
  boolean hasAccounts() {
    return !practice.store().ledger().accounts().all().isEmpty();
  }

  /** True if browsers ask by TLS, here or at the proxy. */
  boolean isSecure() {
    return rules.tls() != WebRules.Tls.NONE;
  }
}
