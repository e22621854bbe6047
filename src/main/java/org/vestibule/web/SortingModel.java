package org.vestibule.web;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.FilingByHand;
import org.vestibule.flow.WaitingPhoto;
import org.vestibule.flow.WaitingStretch;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** Photographs that wait, and one that is filed, as the templates need them. */
final class SortingModel {

  /** What is never filled in beforehand: whose mouth it is, and which side. */
  private static final Set<PhotoFact> NEVER_PRESET =
      EnumSet.of(
          PhotoFact.VISIT,
          PhotoFact.PATIENT,
          PhotoFact.MIRROR,
          PhotoFact.INCISORS,
          PhotoFact.UP,
          PhotoFact.SALVAGE);

  private static final Set<PhotoFact> SHOWN =
      EnumSet.of(
          PhotoFact.VISIT,
          PhotoFact.VIEW,
          PhotoFact.TEETH,
          PhotoFact.MIRROR,
          PhotoFact.INCISORS,
          PhotoFact.STAGE);

  private final Site site;
  private final Words words;
  private final TradeWords trade;
  private final Language language;
  private final Sentences sentences;

  SortingModel(Site site, Asked asked) {
    this.site = site;
    this.language = asked.language();
    this.words = PageWords.of(language);
    this.trade = new TradeWords(words, site.practice().views());
    this.sentences = new Sentences(language, trade);
  }

  /** All of a stretch, for looking. */
  Map<String, Object> stretch(WaitingStretch stretch) {
    return stretch(stretch, stretch.photos());
  }

  /** What of a stretch can be labelled. */
  Map<String, Object> toLabel(WaitingStretch stretch) {
    return stretch(stretch, stretch.photos().stream().filter(SortingModel::canBeSeen).toList());
  }

  private Map<String, Object> stretch(WaitingStretch stretch, List<WaitingPhoto> those) {
    List<Map<String, Object>> photos = new ArrayList<>();
    for (WaitingPhoto photo : those) {
      photos.add(photo(photo, photos.size() + 1));
    }
    Optional<WaitingPhoto> first = those.stream().filter(SortingModel::canBeSeen).findFirst();
    return Map.of(
        "key", first.map(photo -> key(photo.hash())).orElse(""),
        "when", when(stretch.start(), stretch.end()),
        "camera", stretch.camera(),
        "size", words.count("stretch-photographs", those.size()),
        "photos", photos);
  }

  /** False for a file that can't be taken as a photograph, so that there is nothing to look at. */
  static boolean canBeSeen(WaitingPhoto photo) {
    Set<String> leftOut =
        Stream.of(LeftOutKind.values()).map(LeftOutKind::name).collect(Collectors.toSet());
    return photo.reasons().stream().noneMatch(reason -> leftOut.contains(reason.kind()));
  }

  private String when(@Nullable LocalDateTime start, @Nullable LocalDateTime end) {
    if (start == null || end == null) {
      return words.say("no-time");
    }
    String first = Results.days(language).format(start) + ", " + time(start);
    return time(start).equals(time(end)) ? first : first + "–" + time(end);
  }

  private String time(@Nullable LocalDateTime at) {
    return at == null
        ? words.say("no-time")
        : DateTimeFormatter.ofPattern("HH:mm", language.locale()).format(at);
  }

  private Map<String, Object> photo(WaitingPhoto photo, int number) {
    Map<String, Object> model = new HashMap<>(given(photo.proposal(), NEVER_PRESET));
    model.put("key", key(photo.hash()));
    model.put("number", number);
    model.put("time", time(photo.takenAt()));
    model.put("name", photo.name());
    model.put("seen", canBeSeen(photo));
    model.put("reasons", photo.reasons().stream().map(this::reason).toList());
    model.put("known", known(photo.proposal()));
    model.put(
        "quality",
        photo.advice().stream()
            .map(found -> sentences.model(found.sentence(), found.whatToDo()))
            .toList());
    return model;
  }

  private Map<String, Object> reason(WaitingPhoto.Reason reason) {
    Map<String, Object> model = sentences.model(reason.sentence(), reason.advice());
    String key = "reason-" + reason.kind().toLowerCase(Locale.ROOT);
    model.put("word", words.find(key).orElse(reason.kind()));
    return model;
  }

  private List<Map<String, Object>> known(Map<String, String> proposal) {
    return SHOWN.stream()
        .filter(fact -> proposal.containsKey(fact.word()))
        .map(
            fact ->
                Map.<String, Object>of(
                    "label", words.say("known-" + fact.word()),
                    "value", value(fact, proposal.getOrDefault(fact.word(), ""))))
        .toList();
  }

  private String value(PhotoFact fact, String said) {
    return switch (fact) {
      case VIEW -> trade.view(said);
      case STAGE -> trade.stage(said);
      case MIRROR -> words.find("mirror-" + said.replace(' ', '-')).orElse(usually(said));
      case INCISORS -> words.find("edge-" + said).orElse(said);
      default -> said;
    };
  }

  /** The mirror that is usual for a view, which nobody stated. */
  private String usually(String said) {
    String mirror = said.replaceFirst(" \\(.*", "").replace(' ', '-');
    return words.say("known-usually", words.find("mirror-" + mirror).orElse(mirror));
  }

  /** What the fields hold at first. */
  private static Map<String, Object> given(Map<String, String> said, Set<PhotoFact> without) {
    String fields =
        EnumSet.complementOf(EnumSet.copyOf(without)).stream()
            .filter(fact -> said.containsKey(fact.word()))
            .map(
                fact ->
                    Then.encoded(fact.word())
                        + "="
                        + Then.encoded(said.getOrDefault(fact.word(), "")))
            .collect(Collectors.joining("&"));
    return Map.of("given", fields);
  }

  /** One that is filed, with everything that was said of it. */
  Map<String, Object> filed(ContentHash photo, Map<String, String> said) {
    @Nullable LocalDateTime taken = new FilingByHand(site.practice()).takenAt(photo).orElse(null);
    Map<String, Object> model =
        new HashMap<>(given(said, EnumSet.of(PhotoFact.PATIENT, PhotoFact.VISIT)));
    model.put("key", key(photo));
    model.put("number", 1);
    model.put("time", time(taken));
    model.put("name", "");
    model.put("seen", true);
    model.put("reasons", List.of());
    model.put("known", List.of());
    model.put("quality", List.of());
    return Map.of(
        "key", key(photo),
        "when", when(taken, taken),
        "camera", "",
        "size", "",
        "photos", List.of(model));
  }

  private String key(ContentHash photo) {
    return site.photoKeys().of(photo);
  }
}
