package org.vestibule.card;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** A printed card as a good photograph shows it: upright, on a grey table. */
public final class CardPicture {

  private static final int DPI = 150;
  private static final int BORDER = 90;

  private CardPicture() {}

  /** The first card of a drawn sheet. */
  public static BufferedImage of(CardSheet sheet) throws IOException {
    try (PDDocument document = Loader.loadPDF(sheet.pdf())) {
      BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, DPI, ImageType.RGB);
      int width = page.getWidth() / 2;
      int height = page.getHeight() / 2;
      BufferedImage picture =
          new BufferedImage(width + 2 * BORDER, height + 2 * BORDER, BufferedImage.TYPE_INT_RGB);
      Graphics2D canvas = picture.createGraphics();
      canvas.setRenderingHint(
          RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
      canvas.setColor(new Color(120, 118, 112));
      canvas.fillRect(0, 0, picture.getWidth(), picture.getHeight());
      canvas.drawImage(page.getSubimage(0, 0, width, height), BORDER, BORDER, null);
      canvas.dispose();
      return picture;
    }
  }
}
