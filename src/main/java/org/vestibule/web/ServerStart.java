package org.vestibule.web;

import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Sharing;
import org.vestibule.flow.WebRules;
import org.vestibule.flow.phone.Receiving;
import org.vestibule.flow.phone.UploadRules;
import org.vestibule.keys.SelfMade;
import org.vestibule.keys.TlsSide;
import org.vestibule.store.ledger.AccountRow;

/** Says whether the server may be started as it is settled, and starts it. */
public final class ServerStart {

  private ServerStart() {}

  /**
   * Starts the server; refused if others could read patients' photographs without a key and a
   * password.
   *
   * @param console told what whoever runs the server should know; nothing of a patient
   * @param defects told of failures inside a page
   */
  public static Outcome<Server> start(
      Practice practice, WebRules rules, Consumer<String> console, Consumer<Throwable> defects)
      throws IOException {
    Outcome<WebRules> safe = safe(rules, practice.store().ledger().accounts().all());
    if (safe instanceof Refused<WebRules> refused) {
      return refused.as();
    }
    Outcome<Optional<TlsSide>> tls = tls(practice, rules);
    if (tls instanceof Refused<Optional<TlsSide>> refused) {
      return refused.as();
    }
    TlsSide side = tls.orThrow().orElse(null);
    Optional<Trust> trust =
        rules.tls() == WebRules.Tls.OWN
            ? Optional.of(Trust.read(SelfMade.issuer(practice.home().resolve("tls"))))
            : Optional.empty();
    new Receiving(practice, UploadRules.DEFAULT).completeInterrupted();
    new Sharing(practice).tidy();
    try {
      return Outcome.done(Server.start(practice, rules, side, trust, console, defects));
    } catch (JavalinBindException e) {
      return Outcome.refused(
          Outcome.Kind.BUSY,
          "port " + rules.port() + " at " + rules.address() + " is taken, or is not this machine's",
          "another Vestibule may be running; else set another port or address under [web]");
    }
  }

  private static Outcome<Optional<TlsSide>> tls(Practice practice, WebRules rules)
      throws IOException {
    return switch (rules.tls()) {
      case NONE, PROXY -> Outcome.done(Optional.empty());
      case FILE -> rules.files().server(practice.clock()).map(Optional::of);
      case OWN ->
          SelfMade.in(practice.home().resolve("tls"), certified(rules), practice.clock())
              .then(files -> files.server(practice.clock()))
              .map(Optional::of);
    };
  }

  /** What the certificate is for: the names, and the address unless it stands for all of them. */
  private static List<String> certified(WebRules rules) {
    List<String> all = new ArrayList<>(List.of("localhost", "127.0.0.1"));
    all.addAll(rules.names());
    if (!List.of("0.0.0.0", "::", "127.0.0.1").contains(rules.address())) {
      all.add(rules.address());
    }
    return all;
  }

  /** Refuses what would let others in unseen or unasked. */
  static Outcome<WebRules> safe(WebRules rules, List<AccountRow> accounts) {
    boolean loopback = Hosts.isLoopback(rules.address());
    boolean proxy = rules.tls() == WebRules.Tls.PROXY;
    if (!loopback && rules.tls() == WebRules.Tls.NONE) {
      return Outcome.refused(
          "the pages would be sent to other machines without encryption",
          "set tls = \"own\" under [web] in vestibule.toml, or leave address at 127.0.0.1");
    }
    if (!loopback && proxy) {
      return Outcome.refused(
          "with a proxy in front, other machines could still ask past it",
          "leave address at 127.0.0.1 under [web], and let the proxy run on this machine");
    }
    if (accounts.isEmpty() && (!loopback || proxy)) {
      return Outcome.refused(
          "other machines could open the pages, and nobody has a name and a password yet",
          "run \"vestibule people add\" first, for an administrator");
    }
    if (proxy && rules.names().isEmpty()) {
      return Outcome.refused(
          "behind a proxy browsers call the server by a name, and none is settled",
          "write names = [\"photos.example\"] under [web] in vestibule.toml");
    }
    if (proxy && rules.proxyHeader().isEmpty()) {
      return Outcome.refused(
          "behind a proxy everybody would be one address, and one stranger's wrong passwords"
              + " would lock all others out",
          "write proxy-header = \"X-Forwarded-For\" under [web] in vestibule.toml, or the"
              + " header in which your proxy says who asks");
    }
    return Outcome.done(rules);
  }
}
