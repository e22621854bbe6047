package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.assign.Stated;
import org.vestibule.assign.VisitList;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.encode.Encoder;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.CutGrid;
import org.vestibule.jpeg.Preview;
import org.vestibule.release.SmallJpeg;
import org.vestibule.store.ledger.WaitingRow;

/**
 * How a photograph lies before a person, and what becomes of it by that person's words, before
 * anything is filed: worked out by what files it, and nothing is written.
 */
public final class FilingPreview {

  /**
   * What becomes of it.
   *
   * @param stated what the words say, with the way the picture is laid
   * @param cuts where it can be cut without loss
   * @param doubts what speaks against the words
   */
  public record Look(Stated stated, Cuts cuts, List<Doubt> doubts) {
    public Look {
      doubts = List.copyOf(doubts);
    }
  }

  private static final int SHOWN_SIDE = 1400;

  private final Practice practice;
  private final SourceFiles sources;
  private final MadePictures made;

  public FilingPreview(Practice practice) {
    this(practice, new MadePictures());
  }

  /**
   * The same.
   *
   * @param made bounds how many pictures are made at once, and keeps the latest
   */
  public FilingPreview(Practice practice, MadePictures made) {
    this.practice = practice;
    this.sources = new SourceFiles(practice);
    this.made = made;
  }

  /**
   * The picture as a person is asked about it: turned as the camera asked, a mirror image still
   * one, made anew from its pixels.
   *
   * @param longerSide in pixels, 1 to 4096
   */
  public Outcome<byte[]> asked(ContentHash photo, int longerSide) throws IOException {
    return made.within(
        () -> picture(photo).then(found -> small(found.bytes(), longerSide, sheet(found))));
  }

  private Outcome<byte[]> small(byte[] jpeg, int longerSide, Turn turn) {
    return made.kept(
        ContentHash.of(jpeg) + " asked " + longerSide + " " + turn,
        () -> Preview.of(jpeg, longerSide, turn).map(SmallJpeg::of));
  }

  /** What becomes of a photograph by these words; refused with what is missing or can't be. */
  public Outcome<Look> look(ContentHash photo, PersonWords words) throws IOException {
    Outcome<Picture> picture = picture(photo);
    if (!(picture instanceof Done<Picture> found)) {
      return ((Refused<Picture>) picture).as();
    }
    PersonWords said = ProposalWords.completed(words, Map.of());
    CaptureFacts facts = found.value().facts();
    Outcome<Stated> stated = new Lists(practice).stated(facts, said);
    if (!(stated instanceof Done<Stated> known)) {
      return ((Refused<Stated>) stated).as();
    }
    List<Doubt> doubts = doubts(photo, said, known.value(), facts);
    return cuts(found.value(), known.value()).map(cuts -> new Look(known.value(), cuts, doubts));
  }

  /** The picture as it will be displayed, made without loss as for filing, then made small. */
  public Outcome<byte[]> shown(ContentHash photo, PersonWords words) throws IOException {
    return made.within(
        () -> {
          PersonWords said = ProposalWords.completed(words, Map.of());
          return picture(photo)
              .then(
                  source ->
                      new Lists(practice)
                          .stated(source.facts(), said)
                          .then(stated -> shown(source, stated)));
        });
  }

  /**
   * What it is kept by is all that it is made of, so that an old one never stands for a new one.
   */
  private Outcome<byte[]> shown(Picture source, Stated stated) {
    byte[] bytes = source.bytes();
    Turn turn = turn(source, stated);
    Turn sheet = sheet(source);
    return made.kept(
        String.join(
            " ",
            ContentHash.of(bytes).hex(),
            turn.name(),
            sheet.name(),
            String.valueOf(stated.crop()),
            String.valueOf(stated.mayTrim())),
        () ->
            Encoder.shown(bytes, turn, sheet, stated.crop(), stated.mayTrim())
                .then(laid -> Preview.of(laid.bytes(), SHOWN_SIDE, Turn.NONE))
                .map(SmallJpeg::of));
  }

  private List<Doubt> doubts(
      ContentHash photo, PersonWords said, Stated stated, CaptureFacts facts) {
    List<Doubt> doubts = new ArrayList<>(Doubts.of(said, stated, facts, known(photo)));
    String key = said.get(PhotoFact.VISIT);
    if (new VisitBook(practice).all() instanceof Done<VisitList> visits
        && visits.value().byKey(key).isPresent()
        && new Lists(practice).outside(facts, visits.value().byKey(key).get())
            instanceof Done<Boolean> outside
        && outside.value()) {
      doubts.add(new Doubt(Doubt.Kind.OUTSIDE_VISIT, ""));
    }
    return doubts;
  }

  /** What list, name and cards say of one that waits; nothing of one that is filed. */
  private Map<String, String> known(ContentHash photo) {
    Optional<WaitingRow> waiting = practice.store().ledger().waiting().find(photo);
    return waiting
        .map(row -> ProposalWords.stated(WaitingJson.proposal(row.proposal())))
        .orElse(Map.of());
  }

  private Outcome<Cuts> cuts(Picture picture, Stated stated) {
    Turn shown = turn(picture, stated);
    return CutGrid.of(picture.bytes(), shown, stated.mayTrim())
        .map(grid -> Cuts.onSheet(grid, sheet(picture).inverse().then(shown)));
  }

  private static Turn sheet(Picture picture) {
    return picture.turned().inverse().then(Turn.asShown(picture.facts().orientation()));
  }

  private static Turn turn(Picture picture, Stated stated) {
    return picture.turned().inverse().then(stated.laid().turn());
  }

  private Outcome<Picture> picture(ContentHash photo) throws IOException {
    return new KeptPictures(practice)
        .best(photo, sources.facts(photo), practice.store().ledger().intents().current(photo));
  }
}
