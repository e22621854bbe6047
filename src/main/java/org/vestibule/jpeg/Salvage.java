package org.vestibule.jpeg;

import org.vestibule.base.Outcome;

/**
 * The sound part of a photograph that was cut short or is damaged further down. Only for a person
 * who has seen the refusal and wants what there is: nothing here is done by itself.
 *
 * @param picture the sound rows as a bare baseline picture, as stored
 * @param soundRows how many rows of samples they are
 * @param rows how many the whole photograph has
 */
public record Salvage(Transcoded picture, int soundRows, int rows) {

  /**
   * Keeps the rows above the first fault. A whole picture is refused, because there is nothing to
   * salvage; so is a progressive one, whose rows are complete only with its last scan.
   */
  public static Outcome<Salvage> of(byte[] source) {
    try {
      JpegStructure structure = PictureDecoder.structure(source);
      Transcoder.requireShown(structure.colourModel());
      if (structure.progressive()) {
        throw JpegFault.unsuited(
            "a progressive picture has no sound rows before all of its scans are there",
            "copy it from the phone again");
      }
      int sound = soundRows(source, structure);
      JpegStructure part = structure.cutTo(sound);
      long need = MemoryNeed.transcoding(part) + MemoryNeed.coefficients(part.frame());
      Transcoded picture =
          MemoryBudget.shared()
              .within(
                  need,
                  () ->
                      Transcoder.transcode(
                          source,
                          CoefficientTokens.of(PictureDecoder.decode(source, part), false),
                          TranscodePlan.AS_IS));
      return Outcome.done(new Salvage(picture, sound, structure.frame().size().height()));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** What to mark the part with, for example {@code rows 1 to 1232 of 3024}. */
  public String words() {
    return "rows 1 to " + soundRows + " of " + rows;
  }

  private static int soundRows(byte[] source, JpegStructure structure) throws JpegFault {
    try {
      PictureDecoder.stream(source, structure, (component, row, blocks) -> {});
    } catch (JpegFault fault) {
      if (fault.soundRows() == 0) {
        throw fault;
      }
      return fault.soundRows();
    }
    throw JpegFault.unsuited("the picture is whole", "file it as it is");
  }
}
