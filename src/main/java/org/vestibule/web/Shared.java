package org.vestibule.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.dental.Notation;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dental.Tooth;
import org.vestibule.flow.Sharing;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.Preview;
import org.vestibule.release.SheetWords;
import org.vestibule.release.SmallJpeg;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.store.ledger.ShareRow;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** What somebody outside sees: the copies behind their link, and nothing else. */
final class Shared {

  private static final int SMALL_SIDE = 440;

  /** What answers for an open link. */
  @FunctionalInterface
  private interface Step {
    Answer answer(ShareRow share) throws IOException;
  }

  private final Site site;
  private final Sharing sharing;

  Shared(Site site) {
    this.site = site;
    this.sharing = new Sharing(site.practice());
  }

  private Answer with(Asked asked, Step step) throws IOException {
    String scope = asked.visitor().scope();
    Optional<ShareRow> share =
        scope.matches("\\d{1,9}") ? sharing.find(Integer.parseInt(scope)) : Optional.empty();
    return share.isEmpty()
        ? Answers.refused(asked, 410, "shared-nothing")
        : step.answer(share.get());
  }

  /** All copies, to be chosen from by view and tooth. */
  Answer page(Asked asked) throws IOException {
    return with(asked, share -> page(asked, share));
  }

  private Answer page(Asked asked, ShareRow share) {
    Words words = PageWords.of(asked.language());
    TradeWords trade = new TradeWords(words, site.practice().views());
    Notation notation = site.practice().settings().notation();
    Set<String> views = Set.copyOf(asked.queries("view"));
    List<Tooth> teeth =
        asked.queries("tooth").stream().flatMap(number -> tooth(number).stream()).toList();
    ReleaseRow release = sharing.release(share);
    List<Map<String, Object>> photographs = new ArrayList<>();
    Set<String> known = new LinkedHashSet<>();
    for (ShareRow.Photo photo : share.photos()) {
      known.add(photo.view());
      boolean seen =
          (views.isEmpty() || views.contains(photo.view()))
              && (teeth.isEmpty() || teeth(photo).stream().anyMatch(teeth::contains));
      Map<String, Object> model = new HashMap<>(brief(photo, trade, asked));
      model.put("hidden", !seen);
      photographs.add(model);
    }
    Map<String, Object> model = new HashMap<>();
    model.put("title", words.say("shared-title"));
    model.put("script", "shared.js");
    model.put("purpose", words.say("purpose-" + release.purpose()));
    model.put("recipient", release.recipient());
    model.put("until", words.say("share-until", until(share, asked)));
    model.put("count", words.count("share-photos", share.photos().size()));
    model.put("photographs", photographs);
    model.put("chart", new ToothChart(trade, teeth).model());
    model.put("query", Map.of("notation", SearchQuery.word(notation)));
    model.put("notations", Choices.notations(notation, words));
    model.put(
        "views",
        known.stream()
            .map(
                view ->
                    Map.<String, Object>of(
                        "value",
                        view,
                        "word",
                        trade.viewNamed(view),
                        "chosen",
                        views.contains(view)))
            .toList());
    return Answer.page("shared", model);
  }

  private String until(ShareRow share, Asked asked) {
    return Results.days(asked.language())
        .format(share.endsAt().atZone(site.practice().settings().zone()).toLocalDate());
  }

  private static Optional<Tooth> tooth(String number) {
    return number.matches("\\d{2}")
            && Tooth.ofIso(Integer.parseInt(number)) instanceof Done<Tooth> found
        ? Optional.of(found.value())
        : Optional.empty();
  }

  private static List<Tooth> teeth(ShareRow.Photo photo) {
    return Arrays.stream(photo.teeth().split(" ", -1))
        .flatMap(number -> tooth(number).stream())
        .toList();
  }

  private Map<String, Object> brief(ShareRow.Photo photo, TradeWords trade, Asked asked) {
    SheetWords sheet = new SheetWords(asked.language());
    Notation notation = site.practice().settings().notation();
    List<Integer> numbers = teeth(photo).stream().map(Tooth::iso).toList();
    return Map.of(
        "name", photo.name(),
        "view", trade.viewNamed(photo.view()),
        "view-name", photo.view(),
        "teeth", trade.teeth(numbers, notation),
        "numbers", numbers.stream().map(String::valueOf).collect(Collectors.joining(" ")),
        "patient", photo.who(),
        "taken", sheet.when(photo.taken()));
  }

  /** One copy, large, with what lies at its margins. */
  Answer photograph(Asked asked) throws IOException {
    return with(
        asked,
        share -> {
          Optional<ShareRow.Photo> photo = find(share, asked.path("name"));
          Outcome<byte[]> bytes = sharing.picture(share, asked.path("name"));
          if (photo.isEmpty()
              || !(bytes.then(JpegStructure::read) instanceof Done<JpegStructure> jpeg)) {
            return Answers.notFound(asked);
          }
          Words words = PageWords.of(asked.language());
          TradeWords trade = new TradeWords(words, site.practice().views());
          Map<String, Object> model = new HashMap<>(brief(photo.get(), trade, asked));
          model.putAll(new Margins(words, trade).of(orientation(photo.get())));
          model.put("title", model.get("view"));
          model.put("script", "photograph.js");
          model.put("width", jpeg.value().frame().size().width());
          model.put("height", jpeg.value().frame().size().height());
          model.put("sided", orientation(photo.get()).isPresent());
          return Answer.page("shared-photograph", model);
        });
  }

  private static Optional<ShareRow.Photo> find(ShareRow share, String name) {
    return share.photos().stream().filter(photo -> photo.name().equals(name)).findFirst();
  }

  private static Optional<PatientOrientation> orientation(ShareRow.Photo photo) {
    return photo.rowRuns().isEmpty()
        ? Optional.empty()
        : PatientOrientation.parse(photo.rowRuns() + "\\" + photo.columnRuns());
  }

  /** A copy's picture. */
  Answer picture(Asked asked) throws IOException {
    return with(asked, share -> jpeg(asked, sharing.picture(share, asked.path("name"))));
  }

  /** The same small. */
  Answer small(Asked asked) throws IOException {
    return with(
        asked,
        share ->
            jpeg(
                asked,
                site.made()
                    .within(
                        () -> sharing.picture(share, asked.path("name")).then(this::madeSmall))));
  }

  private Outcome<byte[]> madeSmall(byte[] copy) {
    return site.made()
        .kept(
            ContentHash.of(copy) + " shared",
            () -> Preview.of(copy, SMALL_SIDE, Turn.NONE).map(SmallJpeg::of));
  }

  private static Answer jpeg(Asked asked, Outcome<byte[]> picture) {
    if (picture instanceof Done<byte[]> done) {
      return Answer.bytes("image/jpeg", done.value());
    }
    return ((Refused<byte[]>) picture).kind() == Outcome.Kind.BUSY
        ? Answers.refused(asked, 503, "refusal-busy")
        : Answers.notFound(asked);
  }
}
