package org.vestibule.samples;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Writes a picture as a telephone writes it: Exif with a second directory, colour profile, XMP, a
 * second picture and a video after the end. Everything is left out that the builder isn't told.
 */
public final class PhoneJpeg {

  private static final DateTimeFormatter EXIF_TIME =
      DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT);

  private PhoneJpeg() {}

  /** A builder for a file with this raw picture, as the sensor stored it. */
  public static Builder builder(BufferedImage raw) {
    return new Builder(raw);
  }

  /** Collects what goes into the file. */
  public static final class Builder {
    private final BufferedImage raw;
    private final TiffBlock main = new TiffBlock();
    private final TiffBlock exif = new TiffBlock();
    private final TiffBlock gps = new TiffBlock();
    private byte @Nullable [] thumbnail;
    private byte @Nullable [] icc;
    private @Nullable String xmp;
    private @Nullable String comment;
    private @Nullable BufferedImage second;
    private int videoBytes;
    private float quality = 0.8f;
    private Sampling sampling = Sampling.S420;
    private boolean progressive;

    private Builder(BufferedImage raw) {
      this.raw = raw;
    }

    /** JPEG quality from 0 to 1 as the JDK's writer understands it. */
    public Builder quality(double value) {
      quality = (float) value;
      return this;
    }

    public Builder sampling(Sampling value) {
      sampling = value;
      return this;
    }

    public Builder progressive() {
      progressive = true;
      return this;
    }

    /** Exif Orientation; any number is written, also those the standard doesn't know. */
    public Builder orientation(int value) {
      main.shorts(0x0112, value);
      return this;
    }

    public Builder camera(String make, String model) {
      main.ascii(0x010f, make).ascii(0x0110, model);
      return this;
    }

    public Builder software(String words) {
      main.ascii(0x0131, words);
      return this;
    }

    /** Local wall-clock time, with no zone unless {@link #offset} gives one. */
    public Builder takenAt(LocalDateTime time) {
      String text = EXIF_TIME.format(time);
      main.ascii(0x0132, text);
      exif.ascii(0x9003, text).ascii(0x9004, text);
      return this;
    }

    /** Digits after the decimal point of the second. */
    public Builder subSeconds(String digits) {
      exif.ascii(0x9291, digits).ascii(0x9292, digits);
      return this;
    }

    public Builder offset(ZoneOffset offset) {
      String text = offset.equals(ZoneOffset.UTC) ? "+00:00" : offset.getId();
      exif.ascii(0x9010, text).ascii(0x9011, text).ascii(0x9012, text);
      return this;
    }

    public Builder owner(String name) {
      exif.ascii(0xa430, name);
      return this;
    }

    public Builder bodySerial(String serial) {
      exif.ascii(0xa431, serial);
      return this;
    }

    public Builder lens(String model) {
      exif.ascii(0xa434, model);
      return this;
    }

    /** Exposure time as one part of so many of a second. */
    public Builder exposure(int partsOfSecond, double fNumber, int iso) {
      exif.rationals(0x829a, 1, partsOfSecond)
          .rationals(0x829d, (int) Math.round(fNumber * 100), 100)
          .shorts(0x8827, iso);
      return this;
    }

    public Builder focal(double millimetres, int equivalentMillimetres) {
      exif.rationals(0x920a, (int) Math.round(millimetres * 100), 100)
          .shorts(0xa405, equivalentMillimetres);
      return this;
    }

    /** The Exif Flash value: 0 didn't fire, 1 fired, 16 off, 9 on. */
    public Builder flash(int value) {
      exif.shorts(0x9209, value);
      return this;
    }

    /** 0 automatic, 1 set by hand. */
    public Builder whiteBalance(int value) {
      exif.shorts(0xa403, value);
      return this;
    }

    public Builder digitalZoom(int numerator, int denominator) {
      exif.rationals(0xa404, numerator, denominator);
      return this;
    }

    /** Degrees north and east, metres above the sea, all whole hundredths of a second of arc. */
    public Builder position(double latitude, double longitude, int altitudeMetres) {
      gps.ascii(1, latitude < 0 ? "S" : "N")
          .rationals(2, PhoneSegments.degrees(latitude))
          .ascii(3, longitude < 0 ? "W" : "E")
          .rationals(4, PhoneSegments.degrees(longitude))
          .single(5, 0)
          .rationals(6, altitudeMetres, 1);
      return this;
    }

    public Builder makerNote(byte[] bytes) {
      exif.undefined(0x927c, bytes);
      return this;
    }

    /** The small picture of the second directory. */
    public Builder thumbnail(BufferedImage small) {
      thumbnail = PlainJpeg.encode(small, 0.6f, Sampling.S420, false);
      return this;
    }

    public Builder icc(byte[] profile) {
      icc = profile.clone();
      return this;
    }

    public Builder xmp(String packet) {
      xmp = packet;
      return this;
    }

    public Builder comment(String words) {
      comment = words;
      return this;
    }

    /** A second whole JPEG after the first, announced by a multi-picture segment. */
    public Builder secondPicture(BufferedImage picture) {
      second = picture;
      return this;
    }

    /** A stub of a video after everything else, with so many bytes of noise for its content. */
    public Builder trailingVideo(int contentBytes) {
      videoBytes = contentBytes;
      return this;
    }

    /** The file. */
    public byte[] bytes() {
      byte[] plain = PlainJpeg.encode(raw, quality, sampling, progressive);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      out.write(plain, 0, 2);
      writeExif(out);
      if (xmp != null) {
        PhoneSegments.segment(
            out, 0xe1, "http://ns.adobe.com/xap/1.0/", xmp.getBytes(StandardCharsets.UTF_8));
      }
      if (icc != null) {
        PhoneSegments.segment(out, 0xe2, "ICC_PROFILE", PhoneSegments.join(new byte[] {1, 1}, icc));
      }
      int multi = out.size();
      byte[] secondBytes =
          second == null ? new byte[0] : PlainJpeg.encode(second, 0.6f, Sampling.S420, false);
      if (second != null) {
        PhoneSegments.segment(
            out, 0xe2, "MPF", PhoneSegments.multiPicture(0, 0, secondBytes.length));
      }
      if (comment != null) {
        PhoneSegments.segment(out, 0xfe, null, comment.getBytes(StandardCharsets.UTF_8));
      }
      out.write(plain, 2, plain.length - 2);
      byte[] first = out.toByteArray();
      if (second != null) {
        int header = multi + 8;
        byte[] index =
            PhoneSegments.multiPicture(first.length, first.length - header, secondBytes.length);
        System.arraycopy(index, 0, first, header, index.length);
      }
      return PhoneSegments.join(
          first,
          PhoneSegments.join(
              secondBytes, videoBytes == 0 ? new byte[0] : PhoneSegments.video(videoBytes)));
    }

    private void writeExif(ByteArrayOutputStream out) {
      if (exif.isEmpty() && main.isEmpty() && gps.isEmpty() && thumbnail == null) {
        return;
      }
      main.rationals(0x011a, 72, 1).rationals(0x011b, 72, 1).shorts(0x0128, 2).shorts(0x0213, 1);
      exif.undefined(0x9000, "0232".getBytes(StandardCharsets.US_ASCII))
          .shorts(0xa001, 1)
          .longs(0xa002, raw.getWidth())
          .longs(0xa003, raw.getHeight());
      main.child(0x8769, exif);
      if (!gps.isEmpty()) {
        main.child(0x8825, gps);
      }
      TiffBlock next = null;
      if (thumbnail != null) {
        next = new TiffBlock().shorts(0x0103, 6).attachment(0x0201, 0x0202, thumbnail);
      }
      PhoneSegments.segment(out, 0xe1, "Exif\0", main.file(next));
    }
  }
}
