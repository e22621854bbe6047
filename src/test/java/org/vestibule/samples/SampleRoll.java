package org.vestibule.samples;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.vestibule.samples.RawState.Axes;

/** The invented camera roll: every photograph of the plan, drawn and written. */
public final class SampleRoll {

  private static final String HISTORY =
      """
      <?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
      <x:xmpmeta xmlns:x="adobe:ns:meta/">
       <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
        <rdf:Description rdf:about=""
          xmlns:xmp="http://ns.adobe.com/xap/1.0/"
          xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/"
          xmlns:stEvt="http://ns.adobe.com/xap/1.0/sType/ResourceEvent#"
          xmp:CreatorTool="Snipper 2.1" xmp:ModifyDate="2026-03-12T09:31:00+01:00">
         <xmpMM:History><rdf:Seq>
          <rdf:li stEvt:action="flipped" stEvt:when="2026-03-12T09:30:40+01:00"/>
          <rdf:li stEvt:action="cropped" stEvt:when="2026-03-12T09:31:00+01:00"/>
         </rdf:Seq></xmpMM:History>
        </rdf:Description>
       </rdf:RDF>
      </x:xmpmeta>
      <?xpacket end="w"?>
      """;

  private final Map<String, BufferedImage> drawn = new HashMap<>();

  /** One scene in true hand at a size that keeps tests quick. */
  public static BufferedImage picture(Scene scene) {
    return scene.draw(320, 240);
  }

  /** One scene in true hand at any size. */
  public static BufferedImage picture(Scene scene, int width, int height) {
    return scene.draw(width, height);
  }

  /** The plan of the roll. */
  static List<Shot> plan() {
    try (InputStream in =
        Objects.requireNonNull(SampleRoll.class.getResourceAsStream("roll.csv"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#") && !line.startsWith("file,"))
          .map(Shot::of)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The shot's file. */
  byte[] bytes(Shot shot) {
    BufferedImage raw = raw(shot);
    PhoneJpeg.Builder file =
        PhoneJpeg.builder(raw).quality(shot.quality()).sampling(shot.sampling());
    Camera.describe(file, shot);
    hide(file, shot, raw);
    return file.bytes();
  }

  private static void hide(PhoneJpeg.Builder file, Shot shot, BufferedImage raw) {
    boolean tall = raw.getHeight() > raw.getWidth();
    if (shot.has("thumb")) {
      file.thumbnail(Darkroom.scaled(raw, tall ? 120 : 160, tall ? 160 : 120));
    }
    if (shot.has("face")) {
      file.thumbnail(Cartoon.face(160, 120));
    }
    if (shot.has("icc")) {
      file.icc(SampleProfile.bytes());
    }
    if (shot.has("edited")) {
      file.xmp(HISTORY);
    }
    if (shot.has("mpf")) {
      file.secondPicture(Cartoon.face(320, 240));
    }
    if (shot.has("video")) {
      file.trailingVideo(4096);
    }
    if (shot.has("comment")) {
      file.comment("Samplia Duo, chair 2, T. Thistlequay");
    }
    if (shot.has("progressive")) {
      file.progressive();
    }
  }

  /** The picture as the sensor stored it: the true one, mirrored and turned as the shot was. */
  private BufferedImage raw(Shot shot) {
    Axes shown = shot.scene().shownAs();
    boolean swaps = RawState.swaps(shown, shot.seen());
    int width = swaps ? shot.height() : shot.width();
    int height = swaps ? shot.width() : shot.height();
    String key = shot.scene() + " " + width + " " + height;
    BufferedImage truth = drawn.computeIfAbsent(key, k -> shot.scene().draw(width, height));
    BufferedImage spoilt = spoil(shot, truth);
    return RawState.lay(spoilt, shown, RawState.rawFor(shot.seen(), shot.exif()));
  }

  static BufferedImage spoil(Shot shot, BufferedImage truth) {
    BufferedImage picture = truth;
    if (shot.has("blur")) {
      picture = Darkroom.blurred(picture, 6);
    }
    if (shot.has("blown")) {
      picture = Darkroom.blownOut(picture);
    }
    if (shot.has("zoom")) {
      picture = Darkroom.zoomed(picture, 3);
    }
    return shot.has("gray") ? Darkroom.gray(picture) : picture;
  }
}
