package org.vestibule.samples;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;

/**
 * Flat drawings in thick outline: a face that is nobody's, and things that lie about. No lettering,
 * because letters need a font and fonts differ from machine to machine.
 */
final class Cartoon {

  private static final Color LINE = new Color(0x3b2a35);
  private final Graphics2D pen;

  private Cartoon(Graphics2D pen) {
    this.pen = pen;
  }

  private static BufferedImage canvas(
      int width, int height, java.util.function.Consumer<Cartoon> work) {
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    double unit = Math.min(width, height) / 100.0;
    pen.translate(width / 2.0, height / 2.0);
    pen.scale(unit, unit);
    work.accept(new Cartoon(pen));
    pen.dispose();
    return picture;
  }

  /** A face smiling, seen from the front; the patient's left ear, to the right, has a ring. */
  static BufferedImage face(int width, int height) {
    return canvas(width, height, Cartoon::drawFace);
  }

  /** A mug on a desk: the private picture that strays into every camera roll. */
  static BufferedImage mug(int width, int height) {
    return canvas(width, height, Cartoon::drawMug);
  }

  private void drawFace() {
    pen.setPaint(new GradientPaint(0, -70, new Color(0x9fd3d6), 0, 70, new Color(0x5fa5b8)));
    pen.fill(new Rectangle2D.Double(-100, -100, 200, 200));
    shape(new RoundRectangle2D.Double(-42, 45, 84, 60, 40, 40), 0x8a5fb0);
    shape(new RoundRectangle2D.Double(-11, 28, 22, 30, 12, 12), 0xe6a877);
    shape(oval(0, -14, 43, 45), 0xd8582f);
    shape(oval(-33, 2, 6, 9), 0xf2bd8d);
    shape(oval(33, 2, 6, 9), 0xf2bd8d);
    outline(oval(35.5, 13, 3, 3), 0xf0c93a, 1.6f);
    shape(oval(0, 2, 33, 40), 0xf7cba0);
    shape(fringe(), 0xe66a3a);
    for (int side : new int[] {-1, 1}) {
      shape(oval(side * 13, -3, 6.5, 7.5), 0xffffff);
      dot(side * 13 + 1.5, -2, 3.2, 0x2f6f5e);
      dot(side * 13 + 2.5, -3.2, 1.1, 0xffffff);
      dot(side * 21, 12, 5, 0xf3a58d);
    }
    stroke(curve(-20, -14, -13, -19, -6, -14), 0x8f3b1c, 2.2f);
    stroke(curve(6, -15, 13, -21, 20, -16), 0x8f3b1c, 2.2f);
    stroke(curve(-1, 0, 6, 10, -2, 11), 0xb97a4e, 1.6f);
    for (int i = 0; i < 4; i++) {
      dot(-24 + 2.6 * i, 8 + (i % 2) * 2.2, 0.6, 0xb5713f);
    }
    mouth();
  }

  /** A broad smile with two marks: a gap to the viewer's right, a dark tooth beside the middle. */
  private void mouth() {
    Path2D lips = new Path2D.Double();
    lips.moveTo(-18, 19);
    lips.quadTo(0, 25, 18, 19);
    lips.quadTo(13, 36, 0, 36);
    lips.quadTo(-13, 36, -18, 19);
    shape(lips, 0x6e1f2b);
    Area teeth = new Area(lips);
    teeth.intersect(new Area(new Rectangle2D.Double(-20, 15, 40, 13.2)));
    pen.setColor(Color.WHITE);
    pen.fill(teeth);
    Shape clip = pen.getClip();
    pen.clip(teeth);
    fill(new Rectangle2D.Double(0, 15, 5, 15), 0xb5a596);
    fill(new Rectangle2D.Double(13.2, 15, 3, 15), 0x6e1f2b);
    fill(new Rectangle2D.Double(-14.5, 15, 3.4, 15), 0xe0b040);
    for (double x : new double[] {-14.5, -11, -5, 0, 5, 9.5, 13.2}) {
      stroke(curve(x, 15, x, 22, x, 30), 0xb9aeb0, 0.5f);
    }
    pen.setClip(clip);
    outline(lips, 0xb2434f, 2.2f);
  }

  private static Shape fringe() {
    Path2D hair = new Path2D.Double();
    hair.moveTo(-35, 0);
    hair.curveTo(-40, -52, 40, -58, 36, -2);
    hair.curveTo(32, -20, 26, -26, 18, -30);
    hair.curveTo(4, -20, -22, -22, -28, -24);
    hair.curveTo(-32, -16, -33, -8, -35, 0);
    hair.closePath();
    return hair;
  }

  private void drawMug() {
    pen.setPaint(new GradientPaint(0, -70, new Color(0xf0e2c6), 0, 30, new Color(0xd9c39a)));
    pen.fill(new Rectangle2D.Double(-100, -100, 200, 200));
    fill(new Rectangle2D.Double(-100, 22, 200, 100), 0x9a6b42);
    for (int i = 0; i < 6; i++) {
      stroke(curve(-100, 28 + i * 6, 0, 26 + i * 7, 100, 28 + i * 6), 0x8a5c36, 0.8f);
    }
    outline(oval(26, 4, 13, 14), 0x2c7c8c, 6);
    shape(new RoundRectangle2D.Double(-26, -22, 50, 54, 12, 12), 0x3a9cae);
    shape(oval(-1, -22, 25, 6), 0x2c7c8c);
    shape(oval(-1, -21, 21, 4.4), 0x5a3420);
    shape(oval(-8, 6, 8, 8), 0xf3d34a);
    for (int i = 0; i < 3; i++) {
      double x = -10 + i * 9;
      stroke(curve(x, -30, x + 5, -38, x - 1, -45), 0xffffff, 1.6f);
    }
  }

  /** A shade tab on its handle, with a sign of strokes for its code, drawn over a picture. */
  static void shadeTab(BufferedImage picture, double x, double y, double size) {
    Graphics2D pen = picture.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.transform(new AffineTransform(size, 0, 0, size, x, y));
    Cartoon cartoon = new Cartoon(pen);
    pen.setPaint(new GradientPaint(-3, 0, new Color(0xaab2b8), 3, 0, new Color(0xeef2f4)));
    pen.fill(new RoundRectangle2D.Double(-3, 10, 6, 40, 2, 2));
    pen.setPaint(new GradientPaint(-7, -8, new Color(0xf5ecd6), 6, 10, new Color(0xd9c59c)));
    Path2D tab = new Path2D.Double();
    tab.moveTo(-6.5, -9);
    tab.quadTo(0, -10.5, 6.5, -9);
    tab.curveTo(8, 0, 5.5, 11, 0, 12);
    tab.curveTo(-5.5, 11, -8, 0, -6.5, -9);
    pen.fill(tab);
    cartoon.outline(tab, 0xa8926a, 0.5f);
    pen.setPaint(
        new GradientPaint(
            -5, -6, new Color(255, 255, 255, 190), 0, 6, new Color(255, 255, 255, 0)));
    pen.fill(new Ellipse2D.Double(-5, -7, 5, 13));
    cartoon.fill(new RoundRectangle2D.Double(-2.6, 12.6, 5.2, 11.4, 1, 1), 0xffffff);
    cartoon.stroke(curve(-1.3, 14.5, 0.5, 13.5, 1.3, 15.5), 0x202020, 0.6f);
    cartoon.stroke(curve(1.3, 15.5, 0, 17.5, -1.3, 18.5), 0x202020, 0.6f);
    cartoon.stroke(curve(-1.3, 18.5, 0, 18.5, 1.4, 18.5), 0x202020, 0.6f);
    cartoon.stroke(curve(-1.2, 20.2, 1.6, 20.2, -0.4, 22.8), 0x202020, 0.6f);
    pen.dispose();
  }

  private void shape(Shape shape, int rgb) {
    fill(shape, rgb);
    pen.setColor(LINE);
    pen.setStroke(new BasicStroke(1.3f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    pen.draw(shape);
  }

  private void fill(Shape shape, int rgb) {
    pen.setColor(new Color(rgb));
    pen.fill(shape);
  }

  private void outline(Shape shape, int rgb, float wide) {
    stroke(shape, rgb, wide);
  }

  private void stroke(Shape shape, int rgb, float wide) {
    pen.setColor(new Color(rgb));
    pen.setStroke(new BasicStroke(wide, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    pen.draw(shape);
  }

  private void dot(double x, double y, double radius, int rgb) {
    fill(oval(x, y, radius, radius), rgb);
  }

  private static Shape oval(double x, double y, double halfWide, double halfTall) {
    return new Ellipse2D.Double(x - halfWide, y - halfTall, 2 * halfWide, 2 * halfTall);
  }

  private static Shape curve(double x0, double y0, double x1, double y1, double x2, double y2) {
    Path2D path = new Path2D.Double();
    path.moveTo(x0, y0);
    path.quadTo(x1, y1, x2, y2);
    return path;
  }
}
