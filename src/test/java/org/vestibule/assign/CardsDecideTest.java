package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.Assignment.SetAside;
import org.vestibule.assign.Assignment.Waits;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.Arrival;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.jpeg.JpegStructure;

/** Cards, rows and names together: what is filed, what waits, and what is set aside. */
class CardsDecideTest {

  private static final ViewCard FRONTAL = new ViewCard("frontal", null, Mirror.NONE, null, null);
  private static final JpegStructure STRUCTURE = JpegStructure.read(Practice.picture()).orThrow();

  private final List<NamePattern> patterns = new ArrayList<>();
  private final List<CaptureDeclaration> declarations = new ArrayList<>();
  private boolean oneExport;
  private @Nullable Manifest manifest;

  @Test
  void cardsAloneFileWhatTheySettle() {
    CardRoll roll = withView(FRONTAL);

    Decision decision = decided(roll, "p");
    assertThat(decision.visit().key()).isEqualTo("VA");
    assertThat(decision.view().key()).isEqualTo("frontal");
    assertThat(decision.mirror()).isEqualTo(Mirror.NONE);
    assertThat(decision.decidedBy()).isEqualTo("Nightly");
    assertThat(decision.facts())
        .startsWith(
            "between two photographs of its visit's card",
            "everything from the first card on was taken during that visit",
            "the view by the view card before it");
  }

  @Test
  void cardPhotographsAreSetAside() {
    CardRoll roll = withView(FRONTAL);

    assertThat(assign(roll, "VA 09:02"))
        .isEqualTo(
            new SetAside(
                new VisitCard("t-VA"),
                "it is a photograph of a visit card: kept, and never filed"));
    assertThat(assign(roll, "frontal 09:03"))
        .isEqualTo(
            new SetAside(FRONTAL, "it is a photograph of a view card: kept, and never filed"));
  }

  @Test
  void aCardThatCantBeReadWaits() {
    Waits waits = waits(new CardRoll().unreadable("09:02"), "unreadable 09:02");
    assertThat(waits.reasons())
        .containsExactly(
            new WaitReason(Kind.CARD, "a code that can't be read", "photograph the card again"));
  }

  @Test
  void aRowOnACardIsAContradiction() {
    CardRoll roll = new CardRoll().visit("VA", "09:02");
    row(roll, "VA 09:02", "VA,,frontal,,none");
    assertThat(sentences(waits(roll, "VA 09:02")))
        .containsExactly(
            "a visit card is in the picture, but a row of the manifest takes it for a photograph");
  }

  @Test
  void whoseItIsSettlesAloneAndTheViewWaits() {
    CardRoll roll = new CardRoll().visit("VA", "09:02").photo("p", "09:04").visit("VA", "09:28");

    Waits waits = waits(roll, "p");
    assertThat(sentences(waits)).containsExactly("nobody said which view it shows");
    assertThat(waits.proposal().get(PhotoFact.VISIT)).isEqualTo("VA");
  }

  @Test
  void aRowMayAddTheView() {
    CardRoll roll = new CardRoll().visit("VA", "09:02").photo("p", "09:04").visit("VA", "09:28");
    row(roll, "p", ",,frontal,,none");
    assertThat(decided(roll, "p").visit().key()).isEqualTo("VA");
  }

  @Test
  void aViewWaitsWithTheReasonOfItsCards() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view(FRONTAL, "09:03")
            .photo("p", "09:04")
            .photo("q", "09:05")
            .visit("VA", "09:28");
    assertThat(sentences(waits(roll, "p")))
        .containsExactly(
            "view cards and photographs don't take turns one by one, so a card may have been"
                + " forgotten");
    assertThat(waits(roll, "p").proposal().get(PhotoFact.VIEW)).isNull();
  }

  @Test
  void aRowOfAnotherPatientBetweenTheCards() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("p", "09:04")
            .photo("q", "09:05")
            .visit("VA", "09:28");
    row(roll, "q", "VB,,frontal,,none");
    assertThat(sentences(waits(roll, "p")))
        .contains(
            "a row, a folder or a file name between the cards names another patient or visit than the"
                + " cards");
    assertThat(sentences(waits(roll, "q")))
        .contains(
            "the cards before and after it are those of another visit than its row or its name says");
  }

  @Test
  void aNameOfAnotherPatientBetweenTheCards() {
    patterns.add(NamePattern.parse("{patient}_{view}").orThrow());
    CardRoll roll =
        new CardRoll()
            .clockNames()
            .visit("VA", "09:02")
            .named("00562_frontal.jpg")
            .photo("q", "09:05")
            .visit("VA", "09:28");
    assertThat(sentences(waits(roll, "q")))
        .contains("its time lies outside the visits that its folder or file name points to");
  }

  @Test
  void oneExportAndTheCardsAreTwoFacts() {
    patterns.add(NamePattern.parse("{patient}/*").orThrow());
    oneExport = true;
    CardRoll alone = new CardRoll().phone("00417/", "P1", 100).photo("p", "09:04");
    assertThat(sentences(waits(alone, "p")))
        .contains(
            "its folder or file name and the visit list come from one program, so they are one fact");
    CardRoll carded =
        new CardRoll()
            .phone("00417/", "P1", 100)
            .visit("VA", "09:02")
            .view(FRONTAL, "09:03")
            .photo("p", "09:04")
            .visit("VA", "09:28");
    assertThat(decided(carded, "p").visit().key()).isEqualTo("VA");
  }

  @Test
  void folderAndTimeStillDecideWhereCardsAreIncomplete() {
    patterns.add(NamePattern.parse("{patient}/*").orThrow());
    declarations.add(
        CaptureDeclaration.of("frontal", "P1", "none", "", "Bo Quillfeather").orThrow());
    CardRoll roll =
        new CardRoll().phone("00417/", "P1", 100).visit("VA", "09:02").photo("p", "09:04");
    row(roll, "p", ",,frontal");
    assertThat(decided(roll, "p").visit().key()).isEqualTo("VA");
  }

  @Test
  void aCorrectedClockCountsForFoldersToo() {
    patterns.add(NamePattern.parse("{patient}/*").orThrow());
    CardRoll roll = new CardRoll().phone("00417/", "P1", 100).photo("p", "08:04");
    row(roll, "p", ",,frontal,,none");
    assertThat(assign(roll, "p")).isInstanceOf(Waits.class);
    roll.rules(
        new SortingRules(
            false,
            false,
            Duration.ZERO,
            List.of(new ClockCorrection("", "P1", Duration.ofHours(1), "Ann Oak")),
            List.of()));
    assertThat(decided(roll, "p").visit().key()).isEqualTo("VA");
  }

  @Test
  void whereTheIncisorsLieIsNeverACardsWord() {
    ViewCard upper = new ViewCard("upper-occlusal", null, Mirror.AS_SHOT, Incisors.BOTTOM, null);
    ViewCard lower = new ViewCard("lower-occlusal", null, Mirror.AS_SHOT, Incisors.TOP, null);
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view(upper, "09:03")
            .photo("u", "09:04")
            .view(lower, "09:05")
            .photo("l", "09:06")
            .visit("VA", "09:28");
    assertThat(sentences(waits(roll, "u")))
        .containsExactly("nobody said where the incisors lie in this Upper occlusal");

    declarations.add(
        CaptureDeclaration.of("upper-occlusal", "P1", "as shot", "bottom", "Ann Oak").orThrow());
    assertThat(decided(roll, "u").incisors()).isEqualTo(Incisors.BOTTOM);

    declarations.add(
        CaptureDeclaration.of("lower-occlusal", "P1", "as shot", "bottom", "Ann Oak").orThrow());
    assertThat(sentences(waits(roll, "l")))
        .containsExactly("the view card before it names other incisors than what is stated for it");
  }

  @Test
  void aMirrorThatIsNotTheUsualOneIsNeverACardsWord() {
    ViewCard right = new ViewCard("right-buccal", null, Mirror.NONE, null, null);
    ViewCard left = new ViewCard("left-buccal", null, Mirror.NONE, null, null);
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view(right, "09:03")
            .photo("r", "09:04")
            .view(left, "09:05")
            .photo("l", "09:06")
            .visit("VA", "09:28");
    assertThat(waits(roll, "r").reasons())
        .extracting(WaitReason::kind)
        .containsExactly(Kind.NO_MIRROR);
    assertThat(waits(roll, "r").proposal().get(PhotoFact.VIEW)).isEqualTo("right-buccal");

    declarations.add(
        CaptureDeclaration.of("right-buccal", "P1", "as shot", "", "Ann Oak").orThrow());
    assertThat(sentences(waits(roll, "r")))
        .containsExactly("the view card before it names another mirror than what is stated for it");
  }

  @Test
  void aRowOfAnotherViewThanTheCard() {
    CardRoll roll = withView(FRONTAL);
    row(roll, "p", ",,smile,,none");
    assertThat(sentences(waits(roll, "p")))
        .containsExactly("the view card before it names another view than its row or its name");
  }

  @Test
  void aSidedViewWithoutCounterpartIsNeverACardsWord() {
    CardRoll roll = withView(new ViewCard("lesion-palate", null, null, null, null));
    assertThat(sentences(waits(roll, "p")))
        .containsExactly(
            "the view card before it names a side or an arch, and a card alone does not settle that"
                + " for the view Lesion, palate");
    assertThat(waits(roll, "p").proposal().get(PhotoFact.VIEW)).isNull();
  }

  @Test
  void aPersonsWordInARollWithoutCardsIsAsBefore() {
    CardRoll roll = new CardRoll().photo("p", "09:04");
    assertThat(sentences(waits(roll, "p")))
        .containsExactly("only its time points to a visit", "nobody said which view it shows");
  }

  private static CardRoll withView(ViewCard card) {
    return new CardRoll()
        .visit("VA", "09:02")
        .view(card, "09:03")
        .photo("p", "09:04")
        .visit("VA", "09:28");
  }

  private void row(CardRoll roll, String label, String cells) {
    String list = Practice.HEAD + roll.name(label) + ",," + cells + "\n";
    manifest = Manifest.parse(list.getBytes(StandardCharsets.UTF_8), "list").orThrow();
  }

  private Assignment assign(CardRoll roll, String label) {
    AssignSources sources =
        new AssignSources(
            roll.visits(),
            manifest,
            patterns,
            oneExport,
            declarations,
            ViewCatalogue.standard(),
            new TeethReader(Notation.ISO_3950),
            LowerArchShown.INCISORS_DOWN,
            Practice.ZONE,
            "Nightly");
    List<Photo> photos = roll.cards().seen().stream().map(CardsDecideTest::photo).toList();
    Photo asked =
        photos.stream()
            .filter(photo -> photo.arrival().name().equals(roll.name(label)))
            .findFirst()
            .orElseThrow();
    return new Assigner(sources)
        .forRoll(new Roll(photos, List.of()), roll.cards())
        .assign(asked, List.of());
  }

  private static Photo photo(Seen seen) {
    var hash = seen.hash();
    if (hash == null) {
      throw new IllegalStateException("a photograph of a roll has a hash");
    }
    return new Photo(
        new Arrival(Path.of("roll", seen.name()), seen.name(), 10, Instant.EPOCH, hash),
        seen.facts(),
        STRUCTURE,
        List.of(),
        List.of());
  }

  private Decision decided(CardRoll roll, String label) {
    Assignment assignment = assign(roll, label);
    assertThat(assignment).isInstanceOf(Decided.class);
    return ((Decided) assignment).decision();
  }

  private Waits waits(CardRoll roll, String label) {
    Assignment assignment = assign(roll, label);
    assertThat(assignment).isInstanceOf(Waits.class);
    return (Waits) assignment;
  }

  private static List<String> sentences(Waits waits) {
    return waits.reasons().stream().map(WaitReason::sentence).toList();
  }
}
