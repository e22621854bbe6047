package org.vestibule.flow;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.card.CardSighting;
import org.vestibule.card.Suspicion;
import org.vestibule.jpeg.FirstLook;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.PictureWeight;
import org.vestibule.jpeg.Raster;
import org.vestibule.jpeg.SoundScan;
import org.vestibule.quality.Measured;
import org.vestibule.quality.QualityAdvice;

/**
 * What one decoding of a photograph's bytes left for all that comes after: a few numbers, so that
 * they can be kept for every photograph of a roll. It speaks of one content hash alone.
 *
 * @param measured what the advice on quality follows from; null if the picture can't be shown
 * @param sound says that the coded data need not be read again; null if that can't be said
 * @param weight what the proof need not find again; null if it is not known
 */
record FirstSight(
    @Nullable Measured measured, @Nullable SoundScan sound, @Nullable PictureWeight weight) {

  /** Nothing is known. */
  static final FirstSight NONE = new FirstSight(null, null, null);

  /** With the card that a photograph shows, or what else was seen of one. */
  record WithCard(FirstSight sight, CardSighting card) {}

  private record Suspected(FirstSight sight, Suspicion suspicion) {}

  /** Looks at a photograph of which it is known whether it is a card; nothing if it can't be. */
  static FirstSight of(byte[] bytes) {
    return FirstLook.use(bytes, QualityAdvice.PREVIEW_SIDE, FirstSight::of)
            instanceof Outcome.Done<FirstSight> done
        ? done.value()
        : NONE;
  }

  /**
   * Looks at a photograph that may be a card; refused if its picture can't be decoded.
   *
   * @param turned true if the camera asks for a turn, so that the picture will need a proof
   */
  static Outcome<WithCard> withCard(byte[] bytes, boolean turned) {
    return withCard(bytes, null, turned);
  }

  /**
   * The same of a file that was gone through before.
   *
   * @param known how these very bytes are built; null if nobody read that yet
   */
  static Outcome<WithCard> withCard(byte[] bytes, @Nullable JpegStructure known, boolean turned) {
    return FirstLook.use(
            bytes,
            known,
            QualityAdvice.PREVIEW_SIDE,
            turned,
            look -> new Suspected(of(look), Suspicion.of(look)))
        .then(
            seen -> seen.suspicion().settled(bytes).map(card -> new WithCard(seen.sight(), card)));
  }

  private static FirstSight of(FirstLook look) {
    Raster preview = look.preview();
    Measured measured =
        preview == null
            ? null
            : Measured.of(preview, look.facts(), look.structure().frame().size());
    return new FirstSight(measured, look.sound(), look.weight());
  }
}
