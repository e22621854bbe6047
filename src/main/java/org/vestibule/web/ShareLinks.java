package org.vestibule.web;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.ShareWords;
import org.vestibule.flow.Sharing;
import org.vestibule.flow.WebRules;
import org.vestibule.store.ledger.ShareRow;

/** Makes links to copies; a link's secret and the second one are told once, here. */
public final class ShareLinks {

  /** No letters and digits that are taken for one another. */
  private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

  private static final int SECOND_LENGTH = 12;

  /** They stand for all addresses of a machine, and lead nowhere themselves. */
  private static final List<String> EVERY_ADDRESS = List.of("0.0.0.0", "::");

  private static final int GROUP = 4;

  private final Practice practice;
  private final SecureRandom random = new SecureRandom();

  public ShareLinks(Practice practice) {
    this.practice = practice;
  }

  /**
   * A link that was made.
   *
   * @param address what is given to the other one
   * @param second the second secret, to be told by another way; empty if none was asked for
   */
  public record Made(ShareRow share, String address, String second) {}

  /**
   * Makes a link; refused if nobody outside this machine could open it.
   *
   * @param second true if a second secret is wanted
   * @param server where the pages are served, such as {@code https://photos.example:8480}
   */
  public Outcome<Made> make(ShareWords words, boolean second, int days, String server, String by)
      throws IOException {
    WebRules rules = practice.settings().web();
    if (rules.tls() == WebRules.Tls.PROXY && rules.names().isEmpty()) {
      return Outcome.refused(
          "the pages stand behind a proxy, and the address by which others call it is missing, so"
              + " that a link would lead to this machine alone",
          "write names = [\"photos.example\"] with the proxy's name under [web] in vestibule.toml");
    }
    if (rules.tls() == WebRules.Tls.PROXY && rules.proxyHeader().isEmpty()) {
      return Outcome.refused(
          "the pages stand behind a proxy, and the address of whoever opens a link is missing: no"
              + " header is settled in which the proxy says it, and \"vestibule serve\" does not"
              + " start without one",
          "write proxy-header = \"X-Forwarded-For\" under [web] in vestibule.toml, or the header in"
              + " which your proxy says who asks");
    }
    if (!isReachable(rules)) {
      return Outcome.refused(
          "nobody outside this machine can open the pages, so that a link would lead nowhere",
          "write the same as a package to hand over with \"vestibule share make --package\", or"
              + " settle [web] in vestibule.toml first (docs/referrer.md)");
    }
    return make(words, second, days, server, by, new Secrets(random).next());
  }

  /** The same, whoever can open it. */
  Outcome<Made> make(
      ShareWords words, boolean second, int days, String server, String by, String secret)
      throws IOException {
    String told = second ? second() : "";
    char @Nullable [] plain = second ? Sharing.plain(told).toCharArray() : null;
    return new Sharing(practice)
        .make(words, Secrets.mark(secret), plain, days, by)
        .map(share -> new Made(share, server + "/shared#" + secret, told));
  }

  private String second() {
    StringBuilder text = new StringBuilder();
    for (int at = 0; at < SECOND_LENGTH; at++) {
      text.append(at > 0 && at % GROUP == 0 ? "-" : "");
      text.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    return text.toString();
  }

  /**
   * True if other machines can open the pages as they are settled: by a name, or by an address that
   * is one machine's alone.
   */
  static boolean isReachable(WebRules rules) {
    return !rules.names().isEmpty()
        || !(Hosts.isLoopback(rules.address()) || EVERY_ADDRESS.contains(rules.address()));
  }

  /** Where the pages are served as they are settled. */
  public static String server(WebRules rules) {
    return Site.address(rules, rules.port());
  }
}
