/**
 * JPEG files (ITU-T T.81): segments, metadata stripping, lossless coefficient transcoding, previews
 * and facts from coefficients.
 *
 * <h2>Two decoders</h2>
 *
 * <p>The engine reads every picture once, fast, into <em>tokens</em>: for each block its DC
 * coefficient, and its AC coefficients as run, size and bits, two bytes each ({@code
 * SequentialTokens}, {@code ProgressiveTokens}, {@code Tokens}). A turn never computes a value: a
 * reflection flips the bits of every odd frequency while they are written ({@code ScanWriter}), an
 * exchange of rows and columns reorders a block while it is read ({@code ScatteredBlock}). Result,
 * preview and facts are all made from the same tokens ({@code PictureReading}).
 *
 * <p>Scans that refine a progressive picture never touch a value either: what they add is kept as a
 * bit for each coefficient, a word for each block, until the tokens are written ({@code
 * ProgressivePlane}). A crop reads everything, since a picture that is damaged anywhere is refused,
 * but keeps and counts only the blocks that it takes ({@code BlockBox}).
 *
 * <p>The fast decoder takes sound and tidy pictures only. Whatever else it meets it leaves to the
 * plain decoder ({@code PictureDecoder}), which reads bit by bit into arrays of coefficients, as
 * the flow charts of T.81 F.2 and G.2 say. The plain one alone words refusals, so that both always
 * say the same.
 *
 * <p>Most is asked of a photograph when it comes in and nobody has decided about it yet: is it
 * sound, is it a card, how good is it. {@code FirstLook} answers all from one reading of its codes.
 * Of large sequential pictures it keeps no tokens either: blocks become samples at 1/8 and 1/4 and
 * counts as they are read ({@code ValueReader}, {@code ReducedPlane}), the same as the token ways
 * make of them. It reads them as the proof does. What it says of the bytes ({@code SoundScan})
 * spares an untouched picture another reading, and what they weigh ({@code PictureWeight}) spares
 * the proof of a turned one a second decoding of its source.
 *
 * <h2>The proof</h2>
 *
 * <p>{@code Proof} decodes source and result with decoders of its own and its own statement of what
 * a turn is. It shares the reading of marker segments and tables with the engine, and nothing
 * below: a wrong look-up table, a wrong sign or a block in the wrong place can't hide by being
 * wrong the same way twice. A picture that stays as it is, is proved by its tables and coded bytes.
 * A sequential picture that is turned is proved by 128 bits that every coefficient and its place go
 * into ({@code PictureWeight}, {@code ValueReader}): source and result must have the same. Whatever
 * that does not settle, and every difference, is decoded with the plain decoder and compared
 * coefficient by coefficient; where all of the source's would not fit into memory, by digests of
 * 128 bits a block.
 *
 * <p>A third decoder, and a coder, both a bit at a time and by nobody's tables but their own, live
 * in the tests as the reference of both.
 *
 * <h2>Memory</h2>
 *
 * <p>What work will take is estimated from the headers before anything is allocated, and admitted
 * by {@code MemoryBudget}: it waits for its turn, or is refused if it could never have it. 200
 * million sequential samples, or 50 million progressive ones with 4:2:0 colour, go through in a
 * heap of 512 MB.
 */
@NullMarked
package org.vestibule.jpeg;

import org.jspecify.annotations.NullMarked;
