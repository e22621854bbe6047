package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.encode.Role;
import org.vestibule.keys.Passwords;
import org.vestibule.release.Format;
import org.vestibule.release.Purpose;
import org.vestibule.release.Purposes;
import org.vestibule.release.Release;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.store.ledger.ShareRow;
import org.vestibule.words.Language;

/**
 * Shows copies behind a link. They are those of a release, made, allowed and searched like any
 * other; nothing else can be reached by the link.
 */
public final class Sharing {

  /** The longest time for which a link is good; common practice, no source. */
  public static final int MOST_DAYS = 90;

  private static final int MOST_WRONG = 10;

  private final Practice practice;
  private final Ledger ledger;
  private final SharedFiles files;

  public Sharing(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.files = new SharedFiles(practice.home().resolve("shares"));
  }

  /**
   * Makes the copies and the link to them.
   *
   * @param mark the hash of the link's secret, which is not known here
   * @param second a second secret that is told by another way; null for none
   * @param days for how long the link is good
   */
  public Outcome<ShareRow> make(
      ShareWords words, String mark, char @Nullable [] second, int days, String by)
      throws IOException {
    if (days < 1 || days > MOST_DAYS) {
      return Outcome.refused(
          "a link is good for 1 to " + MOST_DAYS + " days, not " + days,
          "name a number of days in between");
    }
    files.tidy(open());
    String hash = second == null ? "" : Passwords.hash(second);
    Instant endsAt = practice.clock().instant().plus(Duration.ofDays(days));
    return new Releasing(practice)
        .make(
            release(words, files.folder(mark), null, practice.settings().language()),
            by,
            (row, made) -> ledger.shares().add(mark, row.id(), hash, by, endsAt, photos(made)))
        .map(row -> ledger.shares().find(mark).orElseThrow());
  }

  private static ReleaseWords release(
      ShareWords words, Path target, @Nullable Path passphrase, Language language) {
    return new ReleaseWords(
        words.purpose(),
        words.photos(),
        words.recipient(),
        words.askedBy(),
        words.why(),
        words.lookedBy(),
        false,
        Map.of(),
        Set.of(Format.JPEG),
        target,
        passphrase,
        language);
  }

  /** The same copies as a package to hand over, where no link can be opened from outside. */
  public Outcome<ReleaseRow> pack(
      ShareWords words, Path target, @Nullable Path passphrase, Language language, String by)
      throws IOException {
    return new Releasing(practice).make(release(words, target, passphrase, language), by);
  }

  private static List<ShareRow.Photo> photos(Release release) {
    List<ShareRow.Photo> photos = new ArrayList<>();
    for (Release.Item item : release.items()) {
      Release.Shown shown = item.shown();
      boolean known = shown.orientation().size() == 2;
      photos.add(
          new ShareRow.Photo(
              item.name(),
              shown.who(),
              shown.when(),
              shown.view(),
              shown.teeth().stream()
                  .map(tooth -> String.valueOf(tooth.iso()))
                  .collect(Collectors.joining(" ")),
              known ? shown.orientation().get(0) : "",
              known ? shown.orientation().get(1) : "",
              shown.jpegHash()));
    }
    return photos;
  }

  /** The ids of a visit's filed photographs, each by its crop if it has one; in shot order. */
  public Outcome<List<String>> ofVisit(String visit) {
    List<String> ids = new ArrayList<>();
    for (ContentHash hash : new PhotoMarks(practice).everUnder(visit.strip())) {
      boolean there =
          CurrentDecision.of(hash, ledger)
              .filter(decision -> decision.visit().equalsIgnoreCase(visit.strip()))
              .isPresent();
      List<Intent> kept = there ? ledger.intents().current(hash) : List.of();
      kept.stream()
          .filter(one -> one.role() == Role.CROP)
          .findFirst()
          .or(() -> kept.stream().findFirst())
          .ifPresent(face -> ids.add(practice.store().ids().of(face)));
    }
    return ids.isEmpty()
        ? Outcome.refused(
            "no photograph is filed under a visit of this key",
            "check the key; \"vestibule visits list\" names all")
        : Outcome.done(ids);
  }

  /** All links, the first one first. */
  public List<ShareRow> all() {
    return ledger.shares().all();
  }

  private List<ShareRow> open() {
    return all().stream().filter(this::isOpen).toList();
  }

  /**
   * True if a link shows something now: nobody ended it, its time is not over, its release holds,
   * and the patients' consent does.
   */
  public boolean isOpen(ShareRow share) {
    return share.isOpen(practice.clock().instant())
        && ledger
            .releases()
            .find(share.release())
            .filter(release -> release.withdrawn() == null && consentHolds(release))
            .isPresent();
  }

  private boolean consentHolds(ReleaseRow release) {
    if (!(Purposes.find(release.purpose()) instanceof Done<Purpose> purpose)) {
      return false;
    }
    LocalDate today = LocalDate.ofInstant(practice.clock().instant(), practice.settings().zone());
    ConsentCheck check = new ConsentCheck(purpose.value(), today);
    return release.items().stream()
        .allMatch(
            item ->
                check.allows(
                        ledger
                            .consents()
                            .latest(item.issuer(), item.patientId(), release.purpose()),
                        item.name(),
                        false)
                    instanceof Done<String>);
  }

  /** The open link with this secret's hash. */
  public Optional<ShareRow> find(String mark) {
    return ledger.shares().find(mark).filter(this::isOpen);
  }

  /** The open link with this number. */
  public Optional<ShareRow> find(int number) {
    return ledger.shares().find(number).filter(this::isOpen);
  }

  /** The release that a link shows. */
  public ReleaseRow release(ShareRow share) {
    return ledger.releases().find(share.release()).orElseThrow();
  }

  /**
   * Somebody comes with the link: true if they may look. Every coming is recorded; after ten wrong
   * second secrets without a right one the link is ended.
   *
   * @param second as it was typed; empty where none is asked
   * @param client from where, by network address
   */
  public boolean comes(ShareRow share, String second, String client) {
    boolean fits =
        share.secret().isEmpty() || Passwords.matches(plain(second).toCharArray(), share.secret());
    ledger.together(
        () -> {
          ledger.shares().came(share.number(), fits, client);
          if (!fits && wrongAtLast(share) >= MOST_WRONG) {
            ledger.shares().end(share.number(), "vestibule", "too many wrong second secrets");
          }
          return share;
        });
    if (fits) {
      release(share)
          .items()
          .forEach(
              item ->
                  ledger
                      .events()
                      .add(
                          "share " + share.number(),
                          "looked at by link",
                          new ContentHash(item.hash()),
                          share.release()));
    }
    return fits;
  }

  /** A second secret without what people add or change when they type it. */
  public static String plain(String secret) {
    return secret.replaceAll("[\\s-]", "").toLowerCase(Locale.ROOT);
  }

  private int wrongAtLast(ShareRow share) {
    int wrong = 0;
    for (ShareRow.Opening opening : ledger.shares().openings(share.number())) {
      wrong = opening.opened() ? 0 : wrong + 1;
    }
    return wrong;
  }

  /** Removes the copies of links that show nothing any more. */
  public void tidy() throws IOException {
    files.tidy(open());
  }

  /** Ends a link at once, and removes what it showed. */
  public Outcome<ShareRow> end(int number, String by, String why) throws IOException {
    Optional<ShareRow> found = ledger.shares().find(number);
    if (found.isEmpty()) {
      return Outcome.refused(
          "there is no link " + number, "\"vestibule share list\" names all of them");
    }
    if (!ledger.shares().end(number, by, why)) {
      return Outcome.refused("link " + number + " was ended before", "there is nothing to do");
    }
    ledger.sessions().endScope("referrer", String.valueOf(number));
    files.tidy(open());
    return Outcome.done(ledger.shares().find(number).orElseThrow());
  }

  /** A copy's picture, if its bytes are those that were searched. */
  public Outcome<byte[]> picture(ShareRow share, String name) throws IOException {
    Optional<ShareRow.Photo> photo =
        share.photos().stream().filter(one -> one.name().equals(name)).findFirst();
    if (photo.isEmpty()) {
      return Outcome.refused("the link shows no such picture", "go back to what it shows");
    }
    Outcome<byte[]> bytes = files.picture(share.mark(), name);
    return bytes instanceof Refused<byte[]>
        ? bytes
        : bytes.then(
            read ->
                ContentHash.of(read).hex().equals(photo.get().fileHash())
                    ? Outcome.done(read)
                    : Outcome.refused(
                        Outcome.Kind.DAMAGE,
                        "the copy is not as it was made",
                        "end the link and make another"));
  }
}
