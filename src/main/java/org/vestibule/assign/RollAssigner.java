package org.vestibule.assign;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;

/** Assigns the photographs of one roll. */
public final class RollAssigner {

  private final AssignSources sources;
  private final Manifest.Matches matches;
  private final Map<String, List<Photo>> others = new HashMap<>();
  private final Map<String, CardSighting> sightings = new HashMap<>();
  private final Map<String, List<PersonWords>> elsewhere = new HashMap<>();
  private final SortingFacts facts;
  private final Sorting sorting;

  RollAssigner(
      AssignSources sources,
      Roll roll,
      RollCards cards,
      Function<ContentHash, List<PersonWords>> elsewhere) {
    this.sources = sources;
    for (Photo photo : roll.photos()) {
      this.elsewhere.put(photo.arrival().name(), elsewhere.apply(photo.arrival().hash()));
    }
    Manifest manifest = sources.manifest();
    this.matches =
        manifest == null
            ? new Manifest.Matches(Map.of(), List.of(), List.of())
            : manifest.match(photoOfFile(roll));
    for (List<Photo> group : roll.sameShot()) {
      for (Photo photo : group) {
        others.put(
            photo.arrival().name(), group.stream().filter(other -> !other.equals(photo)).toList());
      }
    }
    cards.seen().forEach(seen -> sightings.put(seen.name(), seen.sighting()));
    this.facts = SortingFacts.of(cards, sources.visits(), claims(cards), sources.zone());
    this.sorting = Sorting.sort(cards, facts);
  }

  /** What rows and names say of whose photograph each is. */
  private Map<String, List<PhotoClaim>> claims(RollCards cards) {
    Map<String, List<PhotoClaim>> claims = new HashMap<>();
    for (Seen seen : cards.seen()) {
      List<PhotoClaim> said = new ArrayList<>();
      for (Manifest.Row row : rows(seen.name())) {
        said.add(
            new PhotoClaim(row.words().get(PhotoFact.VISIT), row.words().get(PhotoFact.PATIENT)));
      }
      for (PersonWords words : saidElsewhere(seen.name())) {
        said.add(new PhotoClaim(words.get(PhotoFact.VISIT), words.get(PhotoFact.PATIENT)));
      }
      NameFacts names = NameFacts.of(sources.patterns(), seen.name());
      said.add(new PhotoClaim(names.get("visit"), names.get("patient")));
      claims.put(seen.name(), said);
    }
    return claims;
  }

  /** What the cards say about each photograph; nothing if nobody looked for cards. */
  public Sorting sorting() {
    return sorting;
  }

  /** A row may name either of two files with the same content. */
  private static Map<String, String> photoOfFile(Roll roll) {
    Map<String, String> photoOfFile = new HashMap<>();
    for (Photo photo : roll.photos()) {
      photoOfFile.put(photo.arrival().name(), photo.arrival().name());
      roll.leftOut().stream()
          .filter(left -> left.kind() == LeftOutKind.DUPLICATE)
          .filter(left -> photo.arrival().hash().equals(left.hash()))
          .forEach(left -> photoOfFile.put(left.name(), photo.arrival().name()));
    }
    return photoOfFile;
  }

  /** Rows of the manifest that name no photograph of the roll, or several; each a sentence. */
  public List<String> warnings() {
    List<String> warnings = new ArrayList<>(matches.notes());
    Manifest manifest = sources.manifest();
    if (manifest != null) {
      manifest.rows().forEach(row -> RowTime.oddity(row).ifPresent(warnings::add));
    }
    return warnings;
  }

  /** True if a person's row says something of the photograph. */
  public boolean hasRow(Photo photo) {
    return rows(photo.arrival().name()).stream().anyMatch(row -> !row.words().isBlank());
  }

  private List<PersonWords> saidElsewhere(String name) {
    return elsewhere.getOrDefault(name, List.of());
  }

  /**
   * What becomes of a photograph of the roll.
   *
   * @param already why it waits whatever is said of it
   */
  public Assignment assign(Photo photo, List<WaitReason> already) {
    List<WaitReason> reasons = new ArrayList<>(already);
    String name = photo.arrival().name();
    List<Manifest.Row> rows = rows(name);
    Optional<Assignment> card =
        CardPicture.of(sightings.get(name), rows.stream().anyMatch(row -> !row.words().isBlank()));
    if (card.isPresent()) {
      return card.get();
    }
    PersonWords words = rows.isEmpty() ? PersonWords.NONE : rows.get(0).words();
    PersonWords first = words;
    if (rows.stream().anyMatch(row -> !row.words().sameFacts(first))) {
      reasons.add(
          new WaitReason(
              Kind.CONTRADICTION,
              "rows "
                  + rows.get(0).number()
                  + " and "
                  + rows.get(1).number()
                  + " of the manifest mean this file and say different things",
              "keep the row that is right"));
    }
    if (matches.unclear().contains(name)) {
      reasons.add(
          new WaitReason(
              Kind.CONTRADICTION,
              "the manifest names a file that several folders hold",
              "write the folder before the name, such as folder/IMG_0001.JPG"));
    }
    rows.forEach(row -> RowTime.problem(row, photo.facts()).ifPresent(reasons::add));
    words = SaidElsewhere.joined(words, saidElsewhere(name), reasons);
    if (already.isEmpty()) {
      sameShot(photo, words, reasons);
    }
    Device device = Device.of(name, photo.facts());
    Seen seen = Seen.of(photo, new CardSighting.NoCard());
    return new PhotoAssigner(sources, photo.facts(), facts.time(device, seen))
        .assign(words, NameFacts.of(sources.patterns(), name), sorting.of(name), reasons);
  }

  private List<Manifest.Row> rows(String name) {
    return matches.rows().getOrDefault(name, List.of());
  }

  private void sameShot(Photo photo, PersonWords words, List<WaitReason> reasons) {
    List<Photo> versions = others.getOrDefault(photo.arrival().name(), List.of());
    if (versions.isEmpty()) {
      return;
    }
    long otherRows =
        versions.stream()
            .filter(
                other ->
                    !saidElsewhere(other.arrival().name()).isEmpty()
                        || rows(other.arrival().name()).stream()
                            .anyMatch(row -> !row.words().isBlank()))
            .count();
    if (!words.isBlank() && otherRows == 0) {
      return;
    }
    if (words.isBlank() && otherRows == 1) {
      reasons.add(
          new WaitReason(
              Kind.OTHER_VERSION,
              "it is another version of a photograph that a person's row chose",
              "nothing needs to be done, unless this version is the one to file"));
      return;
    }
    reasons.add(
        new WaitReason(
            Kind.SAME_SHOT,
            "there are "
                + (versions.size() + 1)
                + " versions of this shot, such as an edited copy and its original",
            "choose one: give only that one a row in the manifest, or file it by hand"));
  }
}
