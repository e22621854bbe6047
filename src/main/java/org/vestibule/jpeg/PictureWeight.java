package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.Turn;

/**
 * 128 bits that stand for all coefficients of a picture and their places, as the proof's decoder
 * reads them. A block's sum is that of its values, each times a random word for its frequency; it
 * is mixed with a word for the block's place into 64 bits that depend on every bit of both, and
 * these are added up. A turn changes places and signs, and thereby which words a value meets, but
 * not the sums; so source and result are compared without keeping either.
 *
 * <p>There are two sums of 64 bits with words of their own. Each takes two different pictures for
 * the same in less than one of 2^40 cases, as long as nobody looks for them by these very words: a
 * value's difference has at most 15 factors of two, so that at most 2^15 of 2^64 words for its
 * frequency hide it in its block's sum. A mistake of a program knows nothing of the words; against
 * somebody who does, the weight is no protection, and is not meant to be.
 *
 * @param length bytes of the file that was read
 * @param first one sum
 * @param second the other
 * @param blocks how many blocks were weighed
 */
public record PictureWeight(long length, long first, long second, long blocks) {

  /** What weighers found in a file. */
  static PictureWeight of(byte[] file, List<PlaneWeigher> weighers) {
    long first = 0;
    long second = 0;
    long blocks = 0;
    for (PlaneWeigher weigher : weighers) {
      first += weigher.first;
      second += weigher.second;
      blocks += weigher.blocks;
    }
    return new PictureWeight(file.length, first, second, blocks);
  }

  /** Weighs all blocks of a sequential picture; one that is odd in any way is thrown as a fault. */
  static PictureWeight of(byte[] file, JpegStructure structure) throws JpegFault {
    BlockWeights weights = new BlockWeights(Turn.NONE);
    List<PlaneWeigher> weighers = new ArrayList<>();
    for (int i = 0; i < structure.frame().components().size(); i++) {
      BlockGrid grid = BlockGrid.of(structure.frame(), structure.frame().components().get(i));
      weighers.add(PlaneWeigher.ofSource(weights, i, grid));
    }
    read(file, structure, weighers);
    return of(file, weighers);
  }

  /** Reads a picture only to weigh it, a weigher for each component. */
  static ValueScan read(byte[] file, JpegStructure structure, List<PlaneWeigher> weighers)
      throws JpegFault {
    return ValueScan.read(
        file,
        structure,
        (index, quantisation) ->
            new PlaneReading(
                BlockGrid.of(structure.frame(), structure.frame().components().get(index)),
                null,
                weighers.get(index)));
  }
}
