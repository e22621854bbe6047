package org.vestibule.card;

import com.google.zxing.ChecksumException;
import com.google.zxing.FormatException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.DecoderResult;
import com.google.zxing.common.PerspectiveTransform;
import com.google.zxing.qrcode.decoder.Decoder;
import com.google.zxing.qrcode.decoder.QRCodeDecoderMetaData;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.card.CodeRead.Point;

/**
 * Reads codes from three corner marks that were found before, where the ordinary way fails because
 * the card is slanted or bent: every size a card's code can have is tried, the fourth corner is
 * taken from the alignment mark, and the timing lines say where each row and column lies.
 */
final class GridReader {

  /** Sides of the codes that a card can bear, in modules. */
  private static final int[] SIDES = {25, 29, 33, 37, 41};

  private static final int MOST_MARKS = 14;

  /** From an edge to the middle of a corner mark. */
  private static final float MARK = 3.5f;

  /** From the right and bottom edge to the middle of the alignment mark. */
  private static final float ALIGNMENT = 6.5f;

  private final Shades shades;

  GridReader(Shades shades) {
    this.shades = shades;
  }

  /** The codes among these marks. */
  List<CodeRead> read(List<Finder> marks) {
    List<CodeRead> read = new ArrayList<>();
    int count = Math.min(MOST_MARKS, marks.size());
    for (int corner = 0; corner < count; corner++) {
      for (int one = 0; one < count; one++) {
        for (int other = one + 1; other < count; other++) {
          if (one != corner && other != corner) {
            read(marks.get(corner), marks.get(one), marks.get(other)).ifPresent(read::add);
          }
        }
      }
    }
    return read;
  }

  private Optional<CodeRead> read(Finder corner, Finder one, Finder other) {
    if (!corner.fits(one) || !corner.fits(other) || !one.fits(other)) {
      return Optional.empty();
    }
    double ax = one.x() - corner.x();
    double ay = one.y() - corner.y();
    double bx = other.x() - corner.x();
    double by = other.y() - corner.y();
    double cross = ax * by - ay * bx;
    double cosine = (ax * bx + ay * by) / Math.hypot(ax, ay) / Math.hypot(bx, by);
    double ratio = Math.hypot(ax, ay) / Math.hypot(bx, by);
    if (Math.abs(cosine) > 0.7 || ratio > 3 || ratio < 1 / 3.0) {
      return Optional.empty();
    }
    return cross > 0 ? read3(corner, one, other) : read3(corner, other, one);
  }

  private Optional<CodeRead> read3(Finder topLeft, Finder topRight, Finder bottomLeft) {
    float modules =
        topLeft.distance(topRight) / (topLeft.module() + topRight.module())
            + topLeft.distance(bottomLeft) / (topLeft.module() + bottomLeft.module());
    for (int side : SIDES) {
      if (side - 7 < 0.6f * modules || side - 7 > 1.7f * modules) {
        continue;
      }
      for (PerspectiveTransform place : places(topLeft, topRight, bottomLeft, side)) {
        Optional<CodeRead> read = sampled(place, side, topLeft, topRight, bottomLeft);
        if (read.isPresent()) {
          return read;
        }
      }
    }
    return Optional.empty();
  }

  private List<PerspectiveTransform> places(Finder tl, Finder tr, Finder bl, int side) {
    float far = side - MARK;
    float cornerX = tr.x() + bl.x() - tl.x();
    float cornerY = tr.y() + bl.y() - tl.y();
    List<PerspectiveTransform> places = new ArrayList<>();
    float[] at = new AlignmentSearch(shades, tl, tr, bl, side).found();
    float inner = side - ALIGNMENT;
    if (at.length > 0) {
      places.add(
          PerspectiveTransform.quadrilateralToQuadrilateral(
              MARK, MARK, far, MARK, inner, inner, MARK, far, tl.x(), tl.y(), tr.x(), tr.y(), at[0],
              at[1], bl.x(), bl.y()));
    }
    places.add(
        PerspectiveTransform.quadrilateralToQuadrilateral(
            MARK, MARK, far, MARK, far, far, MARK, far, tl.x(), tl.y(), tr.x(), tr.y(), cornerX,
            cornerY, bl.x(), bl.y()));
    return places;
  }

  private Optional<CodeRead> sampled(
      PerspectiveTransform place, int side, Finder tl, Finder tr, Finder bl) {
    TimingLines lines = new TimingLines(shades, place, side);
    float[] columns = lines.columns();
    float[] rows = lines.rows();
    Optional<CodeRead> read = decoded(place, columns, rows, side, tl, tr, bl);
    if (read.isEmpty() && lines.bent()) {
      read = decoded(place, lines.even(), lines.even(), side, tl, tr, bl);
    }
    return read;
  }

  private Optional<CodeRead> decoded(
      PerspectiveTransform place,
      float[] columns,
      float[] rows,
      int side,
      Finder tl,
      Finder tr,
      Finder bl) {
    BitMatrix bits = new BitMatrix(side);
    float[] at = new float[2];
    for (int row = 0; row < side; row++) {
      for (int column = 0; column < side; column++) {
        at[0] = columns[column];
        at[1] = rows[row];
        place.transformPoints(at);
        float above = shades.above(at[0], at[1]);
        if (Float.isNaN(above) || above < 0) {
          bits.set(column, row);
        }
      }
    }
    try {
      DecoderResult result = new Decoder().decode(bits);
      boolean mirrored = result.getOther() instanceof QRCodeDecoderMetaData;
      Finder right = mirrored ? bl : tr;
      Finder below = mirrored ? tr : bl;
      return Optional.of(
          new CodeRead(result.getText(), point(tl), point(right), point(below), side));
    } catch (ChecksumException | FormatException unread) {
      return Optional.empty();
    }
  }

  private static Point point(Finder mark) {
    return new Point(mark.x(), mark.y());
  }
}
