package org.vestibule.forward;

/** Makes one short line of whatever another side says, so that it can stand in a list. */
public final class PlainLine {

  private static final int MOST = 200;

  private PlainLine() {}

  /** Without control characters, at most 200 characters. */
  public static String of(String text) {
    StringBuilder line = new StringBuilder();
    text.codePoints()
        .limit(4L * MOST)
        .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? ' ' : c)
        .forEach(line::appendCodePoint);
    String clean = line.toString().strip().replaceAll(" +", " ");
    return clean.length() <= MOST ? clean : clean.substring(0, MOST) + " ...";
  }
}
