package org.vestibule.samples;

import java.awt.image.BufferedImage;

/**
 * Lays a picture down again so that other directions of the patient run right and down. Letters as
 * in Patient Orientation (DICOM PS3.3 C.7.6.1.1.1): L, R, A, P, H, F. Coded from the vectors alone,
 * apart from the product's own algebra, so that each checks the other.
 */
public final class RawState {

  /** The direction of image right and of image down, one letter each. */
  public record Axes(char right, char down) {

    /** From "L\P" or "L P". */
    public static Axes of(String text) {
      return new Axes(text.charAt(0), text.charAt(2));
    }

    /** The direction the viewer looks in: image right cross image down, in L, P, H axes. */
    public char looking() {
      int[] r = vector(right);
      int[] d = vector(down);
      return letter(
          new int[] {
            r[1] * d[2] - r[2] * d[1], r[2] * d[0] - r[0] * d[2], r[0] * d[1] - r[1] * d[0]
          });
    }

    /** The axes of the picture that a viewer sees who obeys this Exif Orientation. */
    public Axes shownBy(int exifOrientation) {
      return switch (exifOrientation) {
        case 1 -> this;
        case 2 -> new Axes(opposite(right), down);
        case 3 -> new Axes(opposite(right), opposite(down));
        case 4 -> new Axes(right, opposite(down));
        case 5 -> new Axes(down, right);
        case 6 -> new Axes(opposite(down), right);
        case 7 -> new Axes(opposite(down), opposite(right));
        case 8 -> new Axes(down, opposite(right));
        default -> throw new IllegalArgumentException("no Exif Orientation " + exifOrientation);
      };
    }

    @Override
    public String toString() {
      return right + "\\" + down;
    }
  }

  private RawState() {}

  /** The same picture, laid down so that its axes are {@code wanted} instead of {@code shown}. */
  public static BufferedImage lay(BufferedImage picture, Axes shown, Axes wanted) {
    boolean swaps = swaps(shown, wanted);
    int width = swaps ? picture.getHeight() : picture.getWidth();
    int height = swaps ? picture.getWidth() : picture.getHeight();
    // Along which direction of the new picture do we walk when we go right, or down, in the old?
    boolean rightFlips = shown.right() != (swaps ? wanted.down() : wanted.right());
    boolean downFlips = shown.down() != (swaps ? wanted.right() : wanted.down());
    BufferedImage result = new BufferedImage(width, height, picture.getType());
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int along = swaps ? y : x;
        int across = swaps ? x : y;
        int fromX = rightFlips ? picture.getWidth() - 1 - along : along;
        int fromY = downFlips ? picture.getHeight() - 1 - across : across;
        result.setRGB(x, y, picture.getRGB(fromX, fromY));
      }
    }
    return result;
  }

  /** The raw axes from which a viewer obeying Exif sees {@code seen}. */
  public static Axes rawFor(Axes seen, int exifOrientation) {
    for (char right : "LRAPHF".toCharArray()) {
      for (char down : "LRAPHF".toCharArray()) {
        Axes raw = new Axes(right, down);
        if (raw.shownBy(exifOrientation).equals(seen)) {
          return raw;
        }
      }
    }
    throw new IllegalArgumentException("no raw picture is seen as " + seen);
  }

  /** True if rows of the one lie along columns of the other. */
  static boolean swaps(Axes one, Axes other) {
    return axis(one.right()) != axis(other.right());
  }

  static char opposite(char letter) {
    return "RLPAFH".charAt("LRAPHF".indexOf(letter));
  }

  private static int axis(char letter) {
    return "LRAPHF".indexOf(letter) / 2;
  }

  private static int[] vector(char letter) {
    int[] vector = new int[3];
    int sign = letter == 'L' || letter == 'P' || letter == 'H' ? 1 : -1;
    vector[axis(letter)] = sign;
    return vector;
  }

  private static char letter(int[] vector) {
    for (char letter : "LRAPHF".toCharArray()) {
      if (java.util.Arrays.equals(vector(letter), vector)) {
        return letter;
      }
    }
    throw new IllegalArgumentException("right and down lie along one axis");
  }
}
