package org.vestibule.card;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.jpeg.FirstLook;

/**
 * The cheap look: what might be a code's corner marks in a picture at an eighth of its size. Where
 * that shows something busy without marks, such as a code too small for it, that part is searched
 * at a quarter.
 */
final class Suspects {

  private Suspects() {}

  /** The marks seen, in samples of the picture at 1/8, that is in blocks. */
  static List<Finder> in(FirstLook look) {
    Shades small = Shades.of(look.eighth());
    List<Finder> marks = in(small);
    int[] box = Finder.anyFit(marks) ? new int[0] : BusyPart.of(small);
    if (box.length == 0) {
      return marks;
    }
    for (Finder mark : FinderScan.in(Shades.of(look.quarter(box[0], box[1], box[2], box[3])))) {
      marks.add(new Finder(box[0] + mark.x() / 2, box[1] + mark.y() / 2, mark.module() / 2));
    }
    return marks;
  }

  /** The marks in a picture and, for large ones, in the picture at half its size. */
  static List<Finder> in(Shades shades) {
    List<Finder> marks = new ArrayList<>(FinderScan.in(shades));
    for (Finder large : FinderScan.in(shades.halved())) {
      Finder mark = new Finder(2 * large.x() + 0.5f, 2 * large.y() + 0.5f, 2 * large.module());
      if (marks.stream().noneMatch(other -> other.distance(mark) < 3 * mark.module())) {
        marks.add(mark);
      }
    }
    return marks;
  }
}
