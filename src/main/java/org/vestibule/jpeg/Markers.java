package org.vestibule.jpeg;

import java.util.Locale;

/** Marker codes (second byte) and their names (ITU-T T.81 Table B.1). */
final class Markers {

  static final int TEM = 0x01;
  static final int SOF0 = 0xC0;
  static final int DHT = 0xC4;
  static final int JPG = 0xC8;
  static final int DAC = 0xCC;
  static final int SOF15 = 0xCF;
  static final int RST0 = 0xD0;
  static final int RST7 = 0xD7;
  static final int SOI = 0xD8;
  static final int EOI = 0xD9;
  static final int SOS = 0xDA;
  static final int DQT = 0xDB;
  static final int DNL = 0xDC;
  static final int DRI = 0xDD;
  static final int DHP = 0xDE;
  static final int EXP = 0xDF;
  static final int APP0 = 0xE0;
  static final int APP15 = 0xEF;
  static final int COM = 0xFE;

  private Markers() {}

  /** True for the markers that open a frame header. */
  static boolean isFrame(int marker) {
    return marker >= SOF0 && marker <= SOF15 && marker != DHT && marker != JPG && marker != DAC;
  }

  static boolean isRestart(int marker) {
    return marker >= RST0 && marker <= RST7;
  }

  /** True for markers that are reserved and never carry a length here. */
  static boolean isReserved(int marker) {
    return marker > TEM && marker < SOF0;
  }

  static String name(int marker) {
    if (marker >= APP0 && marker <= APP15) {
      return "APP" + (marker - APP0);
    }
    if (isFrame(marker)) {
      return "SOF" + (marker - SOF0);
    }
    if (isRestart(marker)) {
      return "RST" + (marker - RST0);
    }
    return switch (marker) {
      case TEM -> "TEM";
      case DHT -> "DHT";
      case DAC -> "DAC";
      case SOI -> "SOI";
      case EOI -> "EOI";
      case SOS -> "SOS";
      case DQT -> "DQT";
      case DNL -> "DNL";
      case DRI -> "DRI";
      case DHP -> "DHP";
      case EXP -> "EXP";
      case COM -> "COM";
      default -> String.format(Locale.ROOT, "marker FF %02X", marker);
    };
  }
}
