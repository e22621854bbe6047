package org.vestibule.samples;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.Iterator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** A picture coded by the JDK's JPEG writer, without its JFIF segment, as phones leave it out. */
final class PlainJpeg {

  private static final String TREE = "javax_imageio_jpeg_image_1.0";

  private PlainJpeg() {}

  static byte[] encode(
      BufferedImage picture, float quality, Sampling sampling, boolean progressive) {
    Iterator<ImageWriter> writers = ImageIO.getImageWritersByFormatName("jpeg");
    ImageWriter writer = writers.next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(quality);
      if (progressive) {
        how.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
      }
      writer.setOutput(out);
      writer.write(
          null, new IIOImage(picture, null, metadata(writer, picture, how, sampling)), how);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return withoutJfif(bytes.toByteArray());
  }

  private static IIOMetadata metadata(
      ImageWriter writer, BufferedImage picture, ImageWriteParam how, Sampling sampling)
      throws IOException {
    IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(picture), how);
    Node root = metadata.getAsTree(TREE);
    NodeList components = ((Element) root).getElementsByTagName("componentSpec");
    if (components.getLength() == 3) {
      Element luma = (Element) components.item(0);
      luma.setAttribute("HsamplingFactor", Integer.toString(sampling.across));
      luma.setAttribute("VsamplingFactor", Integer.toString(sampling.down));
      metadata.setFromTree(TREE, root);
    }
    return metadata;
  }

  private static byte[] withoutJfif(byte[] jpeg) {
    if ((jpeg[2] & 0xff) != 0xff || (jpeg[3] & 0xff) != 0xe0) {
      throw new IllegalStateException("the JDK's writer no longer starts with a JFIF segment");
    }
    int length = ByteBuffer.wrap(jpeg).getShort(4) & 0xffff;
    ByteBuffer out = ByteBuffer.allocate(jpeg.length - 2 - length);
    out.put(jpeg, 0, 2).put(jpeg, 4 + length, jpeg.length - 4 - length);
    return out.array();
  }
}
