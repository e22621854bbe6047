package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.release.Format;
import org.vestibule.release.Order;
import org.vestibule.release.Passphrase;
import org.vestibule.release.Pseudonyms;
import org.vestibule.release.Purpose;
import org.vestibule.release.Purposes;
import org.vestibule.release.Release;
import org.vestibule.release.ReleaseMaker;
import org.vestibule.store.RunLock;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.words.Language;

/** Copies leave the house: asked for, allowed, made, proved, recorded. */
public final class Releasing {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Practice practice;
  private final Ledger ledger;

  public Releasing(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** By what a release can be made again; the rest stands in its row. */
  record Request(
      List<String> photos,
      List<String> formats,
      String lookedBy,
      boolean several,
      @Nullable Map<String, String> crops,
      @Nullable String version,
      @Nullable String language) {
    Request {
      // Releases of the first versions had no crops, and didn't say how they were made.
      version = version == null ? "" : version;
      language = language == null ? Language.ENGLISH.tag() : language;
      crops = crops == null ? Map.of() : new TreeMap<>(crops);
      photos = List.copyOf(photos);
      formats = List.copyOf(formats);
    }
  }

  /** Makes copies for one purpose and records them. */
  public Outcome<ReleaseRow> make(ReleaseWords words, String by) throws IOException {
    return make(words, by, (row, release) -> {});
  }

  /**
   * The same.
   *
   * @param also done in the transaction that records the release
   */
  Outcome<ReleaseRow> make(ReleaseWords words, String by, BiConsumer<ReleaseRow, Release> also)
      throws IOException {
    return locked(() -> makeNow(words, by, also));
  }

  /**
   * Makes the copies of an earlier release once more, with the same bytes unless they are
   * encrypted.
   */
  public Outcome<ReleaseRow> again(String id, Path target, @Nullable Path passphrase, String by)
      throws IOException {
    return locked(() -> makeAgain(id, target, passphrase, by));
  }

  @FunctionalInterface
  private interface Step {
    Outcome<ReleaseRow> run() throws IOException;
  }

  @SuppressWarnings("try") // the lock is held, not used
  private Outcome<ReleaseRow> locked(Step step) throws IOException {
    Outcome<RunLock> locked = practice.store().lock("release");
    if (!(locked instanceof Done<RunLock> free)) {
      return ((Refused<RunLock>) locked).as();
    }
    try (RunLock lock = free.value()) {
      return step.run();
    }
  }

  private Outcome<ReleaseRow> makeNow(
      ReleaseWords words, String by, BiConsumer<ReleaseRow, Release> also) throws IOException {
    LocalDate day = today();
    int number = ledger.releases().all().size() + 1;
    String id = String.format(Locale.ROOT, "%d-%03d", day.getYear(), number);
    return new Attempt(words, id, day, by, also).make(Optional.empty());
  }

  private LocalDate today() {
    return LocalDate.ofInstant(practice.clock().instant(), practice.settings().zone());
  }

  private Outcome<ReleaseRow> makeAgain(
      String id, Path target, @Nullable Path passphrase, String by) throws IOException {
    Outcome<ReleaseRow> found = show(id);
    if (found instanceof Refused<ReleaseRow>) {
      return found;
    }
    ReleaseRow row = found.orThrow();
    if (row.withdrawn() != null) {
      return Outcome.refused(
          "release " + row.id() + " was withdrawn", "make a new one if there is a reason to");
    }
    Request request = request(row.request());
    ReleaseWords words =
        new ReleaseWords(
            row.purpose(),
            request.photos(),
            row.recipient(),
            row.askedBy(),
            row.why(),
            request.lookedBy(),
            request.several(),
            crops(row),
            request.formats().stream().map(Format::valueOf).collect(Collectors.toSet()),
            target,
            passphrase,
            language(request));
    return new Attempt(words, row.id(), row.madeOn(), by, (same, release) -> {})
        .make(Optional.of(row));
  }

  /** One run of making copies. */
  private final class Attempt {

    private final ReleaseWords words;
    private final String id;
    private final LocalDate day;
    private final String by;
    private final BiConsumer<ReleaseRow, Release> also;
    private final List<ReleaseRow> recorded = new ArrayList<>();

    private Attempt(
        ReleaseWords words,
        String id,
        LocalDate day,
        String by,
        BiConsumer<ReleaseRow, Release> also) {
      this.words = words;
      this.id = id;
      this.day = day;
      this.by = by;
      this.also = also;
    }

    Outcome<ReleaseRow> make(Optional<ReleaseRow> before) throws IOException {
      Outcome<Purpose> purpose =
          Purposes.find(words.purpose()).then(found -> ReleaseRules.fits(found, words));
      if (purpose instanceof Refused<Purpose> refused) {
        return refused.as();
      }
      Outcome<List<ReleasedPhoto>> photos =
          new ReleasePhotos(practice)
              .named(words.photos(), words.crops())
              .then(found -> allowed(purpose.orThrow(), found));
      if (photos instanceof Refused<List<ReleasedPhoto>> refused) {
        return refused.as();
      }
      Path file = words.passphrase();
      Outcome<Optional<Passphrase>> passphrase =
          file == null ? Outcome.done(Optional.empty()) : Passphrase.read(file).map(Optional::of);
      if (passphrase instanceof Refused<Optional<Passphrase>> refused) {
        return refused.as();
      }
      Order order = order(purpose.orThrow(), photos.orThrow(), passphrase.orThrow().orElse(null));
      Outcome<Release> made =
          ReleaseMaker.make(
              order,
              words.target(),
              release ->
                  before
                      .map(row -> ReleaseRules.same(row, version(row), release))
                      .orElseGet(() -> Outcome.done(release)),
              release -> record(release, before));
      if (made instanceof Done<Release>) {
        practice
            .audit()
            .exported(
                photos.orThrow().stream().map(ReleasedPhoto::intent).toList(),
                words.recipient().isBlank() ? words.purpose() : words.recipient(),
                !purpose.orThrow().named(),
                by);
      }
      return made.map(release -> recorded.get(0));
    }

    private Outcome<List<ReleasedPhoto>> allowed(Purpose purpose, List<ReleasedPhoto> photos) {
      long patients =
          photos.stream()
              .map(photo -> photo.original().issuer() + "\n" + photo.original().patientId())
              .distinct()
              .count();
      if (patients > 1 && !words.severalPatients()) {
        return Outcome.refused(
            "these are photographs of " + patients + " patients",
            "check the ids; if they are meant to go together, add --several-patients");
      }
      for (ReleasedPhoto photo : photos) {
        if (purpose.named() && Making.identity(photo.intent()) != Identity.KEPT) {
          return Outcome.refused(
              "photograph "
                  + photo.intent().hash().brief()
                  + " is kept without identity, and copies for \""
                  + purpose.name()
                  + "\" say whose they are",
              "choose a purpose without identity, or leave it out");
        }
      }
      ConsentCheck check = new ConsentCheck(purpose, today());
      for (ReleasedPhoto photo : photos) {
        Outcome<String> allows =
            check.allows(
                ledger
                    .consents()
                    .latest(photo.original().issuer(), photo.original().patientId(), purpose.key()),
                photo.intent().hash().brief(),
                photo.showsFace());
        if (allows instanceof Refused<String> refused) {
          return refused.as();
        }
      }
      return Outcome.done(photos);
    }

    private Order order(
        Purpose purpose, List<ReleasedPhoto> photos, @Nullable Passphrase passphrase) {
      String receiver = words.recipient().toLowerCase(Locale.ROOT);
      byte[] key =
          purpose.lasting()
              ? practice.store().keyFor("recipient", purpose.key(), receiver)
              : practice.store().keyFor("release", id);
      Pseudonyms pseudonyms = new Pseudonyms(key);
      return new Order(
          id,
          purpose,
          words.recipient(),
          practice.settings().practiceName(),
          day,
          words.formats(),
          words.lookedBy(),
          pseudonyms,
          photos.stream().map(ReleasedPhoto::original).toList(),
          ReleaseSecrets.of(practice, purpose, photos, pseudonyms, words.recipient()),
          passphrase,
          words.language());
    }

    private void record(Release release, Optional<ReleaseRow> before) {
      ReleaseRow row = before.orElseGet(() -> row(release));
      ledger.together(
          () -> {
            if (before.isEmpty()) {
              ledger.releases().add(row);
            }
            row.items()
                .forEach(
                    item ->
                        ledger
                            .events()
                            .add(
                                by,
                                before.isEmpty() ? "released" : "released again",
                                new ContentHash(item.hash()),
                                row.id()));
            also.accept(row, release);
            return row;
          });
      recorded.add(row);
    }

    private ReleaseRow row(Release release) {
      List<ReleaseRow.Item> items = new ArrayList<>();
      List<ReleaseRow.Said> said = new ArrayList<>();
      for (Release.Item item : release.items()) {
        String uid = item.original().sopUid();
        items.add(
            new ReleaseRow.Item(
                uid,
                item.original().hash(),
                item.original().issuer(),
                item.original().patientId(),
                item.pseudonym(),
                item.copyUid(),
                item.name()));
        item.attested()
            .forEach(
                option -> said.add(new ReleaseRow.Said(uid, option.name(), words.lookedBy(), day)));
      }
      return new ReleaseRow(
          id,
          words.purpose(),
          words.recipient(),
          words.why(),
          words.askedBy(),
          by,
          day,
          text(),
          release.manifestHash(),
          items,
          said,
          null);
    }

    private String text() {
      Set<Format> formats = words.formats();
      try {
        return JSON.writeValueAsString(
            new Request(
                words.photos(),
                formats.stream().map(Format::name).sorted().toList(),
                words.lookedBy(),
                words.severalPatients(),
                words.crops(),
                ReleaseMaker.VERSION,
                words.language().tag()));
      } catch (JsonProcessingException e) {
        throw new IllegalStateException("a request can't be written as JSON", e);
      }
    }
  }

  private static Request request(String json) {
    try {
      return JSON.readValue(json, Request.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the ledger's request is not what this version writes", e);
    }
  }

  private static Language language(Request request) {
    String tag = request.language();
    return Language.of(tag == null ? "" : tag).orElse(Language.ENGLISH);
  }

  private static String version(ReleaseRow row) {
    String version = request(row.request()).version();
    return version == null ? "" : version;
  }

  /** By photograph, the part of it that left, as it was said. */
  public static Map<String, String> crops(ReleaseRow row) {
    Map<String, String> crops = request(row.request()).crops();
    return crops == null ? Map.of() : crops;
  }

  /** All releases, the first one first. */
  public List<ReleaseRow> all() {
    return ledger.releases().all();
  }

  /** One release. */
  public Outcome<ReleaseRow> show(String id) {
    return ledger
        .releases()
        .find(id.strip())
        .<Outcome<ReleaseRow>>map(Outcome::done)
        .orElseGet(
            () ->
                Outcome.refused(
                    "there is no release " + id.strip(), "\"vestibule release list\" names all"));
  }

  /** Takes a release back: it is not made again. What is out of the house has to be asked back. */
  public Outcome<ReleaseRow> withdraw(String id, String by, String why) {
    return show(id)
        .then(
            row -> {
              if (row.withdrawn() != null) {
                return Outcome.refused(
                    "release " + row.id() + " was withdrawn before", "there is nothing to do");
              }
              ledger.releases().withdraw(row.id(), by, why);
              return show(row.id());
            });
  }
}
