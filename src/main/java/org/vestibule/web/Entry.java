package org.vestibule.web;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.vestibule.flow.OnPages;
import org.vestibule.flow.PageAudit;
import org.vestibule.keys.Passwords;
import org.vestibule.store.ledger.AccountRow;
import org.vestibule.words.Words;

/**
 * Coming in and going: by name and password, or by the opening link where nobody has an account.
 */
final class Entry {

  private static final int MOST_FOR_A_NAME = 5;
  private static final int MOST_FOR_A_CLIENT = 20;
  private static final Duration WITHIN = Duration.ofMinutes(10);
  private static final int LONGEST_NAME = 80;
  private static final int LONGEST_PASSWORD = 1000;

  private final Site site;
  private final Attempts byName;
  private final Attempts byClient;
  private final PageAudit audit;

  /** Each check takes 19 MiB and a moment: only so many at once. */
  private final Semaphore checks = new Semaphore(2);

  /** Checked where there is no account, so that an answer's time does not tell who has one. */
  private final String nobody;

  Entry(Site site) {
    this.site = site;
    this.byName = new Attempts(MOST_FOR_A_NAME, WITHIN, site.practice().clock());
    this.byClient = new Attempts(MOST_FOR_A_CLIENT, WITHIN, site.practice().clock());
    this.audit = new PageAudit(site.practice());
    this.nobody = Passwords.hash(site.secrets().next().toCharArray());
  }

  /** Asks who it is, and leads back to what was asked. */
  static Answer ask(Site site, Asked asked) {
    String then = asked.route().isSafe() ? asked.address() : "/";
    return (site.hasAccounts() ? signIn(asked, then, "") : open(asked, then, "")).with(401);
  }

  private static Answer signIn(Asked asked, String then, String wrong) {
    return form("sign-in", "sign-in-title", "", asked, then, wrong);
  }

  private static Answer open(Asked asked, String then, String wrong) {
    return form("open", "open-title", "open.js", asked, then, wrong);
  }

  private static Answer form(
      String template, String title, String script, Asked asked, String then, String wrong) {
    return Answer.page(
        template,
        Map.of(
            "title",
            PageWords.of(asked.language()).say(title),
            "script",
            script,
            "then",
            Then.safe(then),
            "wrong",
            wrong));
  }

  Answer signInPage(Asked asked) {
    return site.hasAccounts()
        ? signIn(asked, asked.query("then"), "")
        : open(asked, asked.query("then"), "");
  }

  Answer openPage(Asked asked) {
    return site.hasAccounts() ? Answer.to("/sign-in") : open(asked, asked.query("then"), "");
  }

  /** Exchanges the opening link's secret for a session. */
  Answer opened(Asked asked) throws IOException {
    if (site.hasAccounts() || byClient.tooMany(asked.client())) {
      return Answers.refused(asked, 429, "refusal-attempts");
    }
    if (!site.opening().use(asked.form("secret"))) {
      byClient.failed(asked.client());
      audit.refused(new OnPages("", "", asked.client()), "wrong opening link");
      Words words = PageWords.of(asked.language());
      return open(asked, asked.form("then"), words.say("open-wrong")).with(403);
    }
    audit.signedIn(new OnPages("", "", asked.client()));
    site.console().accept("The opening link was used. For another browser, open");
    site.console().accept(Server.openingAddress(site));
    String secret = site.sittings().begin("", Role.ADMINISTRATOR, "", "");
    return Answer.to(Then.safe(asked.form("then"))).beginning(secret);
  }

  Answer signedIn(Asked asked) throws IOException {
    String name = asked.form("name");
    if (name.length() > LONGEST_NAME
        || byName.tooMany(name)
        || byClient.tooMany(asked.client())
        || !checks.tryAcquire()) {
      return Answers.refused(asked, 429, "refusal-attempts");
    }
    try {
      return checked(asked, name);
    } finally {
      checks.release();
    }
  }

  private Answer checked(Asked asked, String name) throws IOException {
    Optional<AccountRow> account = site.practice().store().ledger().accounts().find(name);
    String said = asked.exactly("password");
    boolean fits =
        said.length() <= LONGEST_PASSWORD
            && Passwords.matches(
                said.toCharArray(), account.map(AccountRow::password).orElse(nobody));
    Optional<Role> role = account.flatMap(row -> Role.of(row.role()));
    if (!fits || role.isEmpty()) {
      byName.failed(name);
      byClient.failed(asked.client());
      // What was typed for a name may be a password: a name that nobody has is not written down.
      String known = account.map(AccountRow::name).orElse("unknown name");
      audit.refused(new OnPages("", known, asked.client()), "name and password do not fit");
      Words words = PageWords.of(asked.language());
      return signIn(asked, asked.form("then"), words.say("sign-in-wrong")).with(403);
    }
    byName.succeeded(name);
    audit.signedIn(new OnPages("", name, asked.client()));
    site.practice().store().ledger().events().add(name, "signed in", null, "");
    site.sittings().end(asked.visitor());
    String secret = site.sittings().begin(name, role.get(), "", "");
    return Answer.to(Then.safe(asked.form("then"))).beginning(secret);
  }

  Answer signedOut(Asked asked) throws IOException {
    if (asked.visitor().session().isPresent()) {
      audit.signedOut(asked.who());
    }
    site.sittings().end(asked.visitor());
    return Answer.to("/sign-in").ending();
  }

  /** Asks who sits there. */
  Answer whoPage(Asked asked) {
    List<String> people = site.practice().store().ledger().sessions().people(20);
    return Answer.page(
        "who",
        Map.of(
            "title", PageWords.of(asked.language()).say("who-title"),
            "then", Then.safe(asked.query("then")),
            "people", people));
  }

  Answer who(Asked asked) {
    String person = asked.form("person");
    if (person.isEmpty() || person.length() > LONGEST_NAME) {
      return Answers.refused(asked, 400, "refusal-name");
    }
    site.sittings().person(asked.visitor(), person);
    return Answer.to(Then.safe(asked.form("then")));
  }
}
