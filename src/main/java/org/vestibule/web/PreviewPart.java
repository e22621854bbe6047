package org.vestibule.web;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.assign.Stated;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Direction;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.View;
import org.vestibule.flow.Doubt;
import org.vestibule.flow.FilingPreview;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** What becomes of a photograph by what is said of it so far: the next question, or the preview. */
final class PreviewPart {

  private final Site site;
  private final FilingPreview preview;

  PreviewPart(Site site) {
    this.site = site;
    this.preview = new FilingPreview(site.practice());
  }

  Answer part(Asked asked) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    if (photo.isEmpty()) {
      return Answers.notFound(asked);
    }
    PersonWords words = Labels.words(asked::query, asked.visitor().person());
    Optional<View> view = view(words);
    Map<String, Object> model = new HashMap<>();
    model.put("edge", view.isPresent() && view.get().occlusal() ? "incisors" : "up");
    String ask = ask(view, words);
    Outcome<FilingPreview.Look> look =
        ask.isEmpty()
            ? preview.look(photo.get(), words)
            : Outcome.refused(PageWords.of(asked.language()).say("ask-" + ask), "");
    model.put("ask", look instanceof Refused<FilingPreview.Look> ? ask : "");
    if (look instanceof Done<FilingPreview.Look> done) {
      model.put("trouble", false);
      model.put("look", List.of(new Shown(asked).model(done.value())));
    } else {
      Refused<FilingPreview.Look> refused = (Refused<FilingPreview.Look>) look;
      model.put("trouble", true);
      model.putAll(Sentences.of(asked, site).model(refused.reason(), refused.advice()));
      model.put("open", !ask.isEmpty());
      model.put("trim", !words.get(PhotoFact.TRIM).equals("yes"));
      model.put("look", List.of());
    }
    return Answer.part("previewed", model);
  }

  private Optional<View> view(PersonWords words) {
    return site.practice().views().find(words.get(PhotoFact.VIEW)) instanceof Done<View> found
        ? Optional.of(found.value())
        : Optional.empty();
  }

  /** What has to be said next; empty if enough is said to try. */
  private static String ask(Optional<View> view, PersonWords words) {
    if (view.isEmpty()) {
      return "view";
    }
    if (!words.says(PhotoFact.MIRROR)) {
      return "mirror";
    }
    boolean unsaid = words.get(PhotoFact.INCISORS).equals("none");
    return view.get().occlusal() && unsaid ? "incisors" : "";
  }

  /** The preview in words of the asker's language. */
  private final class Shown {
    private final Asked asked;
    private final Words words;
    private final TradeWords trade;

    Shown(Asked asked) {
      this.asked = asked;
      this.words = PageWords.of(asked.language());
      this.trade = new TradeWords(words, site.practice().views());
    }

    Map<String, Object> model(FilingPreview.Look look) {
      Stated stated = look.stated();
      Map<String, Object> model = new HashMap<>();
      model.putAll(new Margins(words, trade).of(Optional.of(stated.laid().shown())));
      model.put("shown", stated.laid().shown().text());
      model.put("key", asked.path("key"));
      model.put("query", asked.queryText());
      model.put("view", trade.view(stated.view()));
      model.put(
          "teeth", trade.teeth(numbers(stated.teeth()), site.practice().settings().notation()));
      model.put("iso", joined(numbers(stated.teeth())));
      model.put("mirrored", words.say("previewed-" + word(stated.mirror())));
      model.put("across-mouth", acrossMouth(stated));
      model.put("across", joined(look.cuts().across()));
      model.put("down", joined(look.cuts().down()));
      model.put("wide", look.cuts().width());
      model.put("high", look.cuts().height());
      model.put("doubts", look.doubts().stream().map(this::doubt).toList());
      model.put("doubtful", !look.doubts().isEmpty());
      model.put(
          "kinds",
          look.doubts().stream()
              .map(doubt -> doubt.kind().name())
              .distinct()
              .collect(Collectors.joining(",")));
      return model;
    }

    /** Where right and left lie at no margin, whether one looks from right to left or back. */
    private String acrossMouth(Stated stated) {
      Direction looking = stated.laid().shown().looking();
      return words.find("looking-" + looking.name().toLowerCase(Locale.ROOT)).orElse("");
    }

    private String doubt(Doubt doubt) {
      String known =
          switch (doubt.kind()) {
            case OTHER_VIEW -> trade.view(doubt.known());
            case OTHER_MIRROR -> words.say("mirror-" + doubt.known().replace(' ', '-'));
            case OTHER_INCISORS, CAMERA_UP -> words.find("edge-" + doubt.known()).orElse("");
            default -> doubt.known();
          };
      return words.say("doubt-" + doubt.kind().name().toLowerCase(Locale.ROOT), known);
    }
  }

  private static String word(Mirror mirror) {
    return mirror.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static List<Integer> numbers(Teeth teeth) {
    return teeth.teeth().stream().map(Tooth::iso).toList();
  }

  private static String joined(List<Integer> numbers) {
    return numbers.stream().map(String::valueOf).collect(Collectors.joining(","));
  }
}
