package org.vestibule.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import org.vestibule.flow.WebRules;
import org.vestibule.store.ledger.SessionRow;
import org.vestibule.store.ledger.Sessions;

/** Begins, finds and ends sessions. Only a secret's hash is kept; who loses it signs in again. */
final class Sittings {

  /** A use is written down this seldom, since every writing waits for the disk. */
  private static final Duration WRITTEN_EVERY = Duration.ofMinutes(1);

  private final Sessions sessions;
  private final WebRules rules;
  private final Clock clock;
  private final Secrets secrets;
  private final Consumer<SessionRow> ranOut;

  /**
   * Sittings of this ledger.
   *
   * @param ranOut is told once of each that ended by itself, when that is noticed
   */
  Sittings(
      Sessions sessions,
      WebRules rules,
      Clock clock,
      Secrets secrets,
      Consumer<SessionRow> ranOut) {
    this.sessions = sessions;
    this.rules = rules;
    this.clock = clock;
    this.secrets = secrets;
    this.ranOut = ranOut;
  }

  /**
   * Begins one; its secret, for the browser alone.
   *
   * @param account who signed in, or empty
   * @param scope the one thing that it is about, or empty
   * @param person who sits there, or empty
   */
  String begin(String account, Role role, String scope, String person) {
    return begin(account, role, scope, person, rules.longest());
  }

  /** The same for at most so long. */
  String begin(String account, Role role, String scope, String person, Duration longest) {
    Instant now = clock.instant();
    sessions.past(now, now.minus(rules.idle())).forEach(this::over);
    String secret = secrets.next();
    sessions.begin(
        new SessionRow(
            Secrets.mark(secret),
            account,
            role.word(),
            scope,
            person,
            now,
            now,
            now.plus(longest)));
    return secret;
  }

  /** Who holds this secret; nobody if it is none, ended, or has not been used for too long. */
  Visitor visitor(String secret) {
    Optional<SessionRow> known =
        Secrets.isOne(secret) ? sessions.find(Secrets.mark(secret)) : Optional.empty();
    known.filter(row -> !lasts(row)).ifPresent(this::over);
    Optional<SessionRow> session = known.filter(this::lasts);
    session.ifPresent(this::used);
    Role role = session.flatMap(row -> Role.of(row.role())).orElse(Role.NOBODY);
    String csrf = Secrets.isOne(secret) ? Secrets.csrf(secret) : "";
    return new Visitor(role, role == Role.NOBODY ? Optional.empty() : session, csrf);
  }

  /** Of two threads that notice it, one tells. */
  private void over(SessionRow session) {
    if (sessions.end(session.mark())) {
      ranOut.accept(session);
    }
  }

  private boolean lasts(SessionRow session) {
    Instant now = clock.instant();
    return now.isBefore(session.endsAt()) && now.isBefore(session.seenAt().plus(rules.idle()));
  }

  private void used(SessionRow session) {
    Instant now = clock.instant();
    if (now.isAfter(session.seenAt().plus(WRITTEN_EVERY))) {
      sessions.seen(session.mark(), now);
    }
  }

  /** Says who sits there now. */
  void person(Visitor visitor, String person) {
    visitor.session().ifPresent(session -> sessions.person(session.mark(), person));
  }

  void end(Visitor visitor) {
    visitor.session().ifPresent(session -> sessions.end(session.mark()));
  }
}
