package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Makes a bare baseline JPEG out of a picture, turned and cropped, without re-encoding a sample.
 */
public final class Transcoder {

  /** Coded data is close to random, so that about one byte in 256 is followed by a stuffed one. */
  private static final int STUFFED_SHARE = 100;

  /** Bytes that are enough for tables and headers. */
  private static final int HEADERS = 2048;

  /** Of a picture without tokens so many rows of MCUs, or twice as many, are counted. */
  private static final int COUNTED_ROWS = 12;

  private Transcoder() {}

  /**
   * Transcodes a file's first picture. What can't be done without loss, or is not a gray or YCbCr
   * picture that is whole, is refused.
   */
  public static Outcome<Transcoded> transcode(byte[] source, TranscodePlan plan) {
    return use(
        source,
        plan,
        picture -> {
          requireShown(picture.structure.colourModel());
          return transcode(source, picture, plan);
        });
  }

  /**
   * The same; a picture that stays as it is and was read before is not decoded again.
   *
   * @param known what a look at the very same bytes said of them; null if nobody looked
   */
  public static Outcome<Transcoded> transcode(
      byte[] source, TranscodePlan plan, @Nullable SoundScan known) {
    if (known == null || !known.maySpeakOf(source) || !isWhole(plan)) {
      return transcode(source, plan);
    }
    try {
      return Outcome.done(MetadataStrip.of(source, known.structure()));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /**
   * The same for a picture of one to four components of any colours. The result is bare, so that
   * whoever shows it must know what the components stand for.
   */
  static Outcome<Transcoded> carry(byte[] source, TranscodePlan plan) {
    return use(source, plan, picture -> transcode(source, picture, plan));
  }

  private static Outcome<Transcoded> use(
      byte[] source, TranscodePlan plan, Decoding.Use<Transcoded> use) {
    try {
      if (isWhole(plan)) {
        JpegStructure structure = PictureDecoder.structure(source);
        TokenPicture checked = SoundScan.checked(source, structure);
        if (checked != null && checked.plainScan != null) {
          return Outcome.done(use.of(checked));
        }
      }
      return Outcome.done(Decoding.use(source, plan, use));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** True if the picture stays as it is. */
  private static boolean isWhole(TranscodePlan plan) {
    return plan.turn() == Turn.NONE && plan.crop() == null;
  }

  /** Requires colours that a bare baseline picture states without a word. */
  static void requireShown(ColourModel model) throws JpegFault {
    if (model != ColourModel.GRAY && model != ColourModel.YCBCR) {
      throw JpegFault.unsuited(
          "the picture's colours are " + model.words() + ", gray or YCbCr were expected",
          "export the photo again as an ordinary colour JPEG");
    }
  }

  static Transcoded transcode(byte[] source, TokenPicture picture, TranscodePlan plan)
      throws JpegFault {
    Layout layout = Layout.of(picture.structure.frame(), plan);
    PlainScan plain = picture.plainScan;
    byte[] bytes =
        plain != null && isWhole(plan)
            ? plain.rewrapped(
                source, layout.frame(), quantisation(picture, new BlockTurn(Turn.NONE)))
            : recoded(picture, layout);
    return new Transcoded(
        bytes, layout.effectiveCrop(), layout.across().trimmed(), layout.down().trimmed());
  }

  private static List<int[]> quantisation(TokenPicture picture, BlockTurn turn) {
    List<int[]> tables = new ArrayList<>();
    for (TokenPlane plane : picture.planes) {
      tables.add(turn.quantisation(plane.quantisation));
    }
    return tables;
  }

  private static byte[] recoded(TokenPicture picture, Layout layout) throws JpegFault {
    BlockTurn turn = new BlockTurn(layout.turn());
    BlockWalk walk = new BlockWalk(picture, layout);
    int step = picture.untold == null ? 1 : Math.max(1, walk.rows() / COUNTED_ROWS);
    SymbolCounter counter = new SymbolCounter(picture, walk.takesAll());
    for (int[] scan : walk.scans()) {
      walk.scan(scan, step, counter);
    }
    if (step > 1) {
      counter.countAllOnce();
    }
    int sets = picture.planes.size() == 1 ? 1 : 2;
    HuffmanTable[] dc = new HuffmanTable[sets];
    HuffmanTable[] ac = new HuffmanTable[sets];
    for (int i = 0; i < sets; i++) {
      dc[i] = counter.dcTable(i);
      ac[i] = counter.acTable(i);
    }
    long bytes = step * counter.bits(dc, ac) / 8;
    int sizeHint = Math.toIntExact(bytes + bytes / STUFFED_SHARE);
    BaselineWriter out =
        new BaselineWriter(walk.scans().size() == 1 ? HEADERS : HEADERS + sizeHint);
    out.frame(layout.frame(), quantisation(picture, turn));
    for (int i = 0; i < sets; i++) {
      out.huffman(0, i, dc[i]);
      out.huffman(1, i, ac[i]);
    }
    ScanWriter writer = writer(picture, turn, dc, ac, sizeHint);
    List<int[]> scans = walk.scans();
    for (int i = 0; i < scans.size(); i++) {
      if (i > 0) {
        writer.finish(out);
      }
      out.scan(scans.get(i), tables(scans.get(i)));
      walk.scan(scans.get(i), writer);
    }
    if (picture.untold != null) {
      picture.untold.release(walk.takesAll());
    }
    return writer.finishAll(out);
  }

  private static int[] tables(int[] scan) {
    return Arrays.stream(scan).map(component -> SymbolCounter.tableOf(component) * 0x11).toArray();
  }

  private static ScanWriter writer(
      TokenPicture picture, BlockTurn turn, HuffmanTable[] dc, HuffmanTable[] ac, int sizeHint) {
    ProgressivePicture untold = picture.untold;
    return untold == null
        ? new TokenWriter(picture, turn, dc, ac, sizeHint)
        : new ProgressiveWriter(picture, untold, turn, dc, ac, sizeHint);
  }
}
