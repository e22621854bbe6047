package org.vestibule.intake;

import com.drew.lang.Rational;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The ways in which a latitude or longitude is written. */
final class PlaceSpellings {

  /** About eleven metres. */
  private static final int DECIMALS = 4;

  private static final int RATIONAL_BYTES = 8;

  private final Set<String> texts = new LinkedHashSet<>();
  private final Set<String> bytes = new LinkedHashSet<>();

  Set<String> texts() {
    return texts;
  }

  Set<String> bytes() {
    return bytes;
  }

  /** Degrees as texts write them, without a sign: some write it, some write a letter. */
  void degrees(double signed) {
    if (!Double.isFinite(signed)) {
      return;
    }
    BigDecimal degrees = new BigDecimal(Math.abs(signed));
    texts.add(degrees.setScale(DECIMALS, RoundingMode.DOWN).toPlainString());
    texts.add(degrees.setScale(DECIMALS, RoundingMode.HALF_UP).toPlainString());
    long seconds = Math.round(Math.abs(signed) * 3600);
    String rest = seconds / 60 % 60 + "' " + seconds % 60;
    texts.add(seconds / 3600 + " deg " + rest);
    texts.add(seconds / 3600 + "\u00b0 " + rest);
    texts.add((seconds / 3600 + "\u00b0" + rest).replace(" ", ""));
  }

  /**
   * Degrees, minutes and seconds as Exif stores them: the fractions as texts write them, and their
   * bytes in both orders (CIPA DC-008 4.6.6, RATIONAL of TIFF 6.0 section 2, from memory).
   */
  void rationals(List<Rational[]> positions) {
    for (Rational[] position : positions) {
      if (Arrays.stream(position).allMatch(Rational::isZero)) {
        continue;
      }
      Stream.of(" ", ",", ", ").map(between -> fractions(position, between)).forEach(texts::add);
      for (ByteOrder order : List.of(ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN)) {
        ByteBuffer raw = ByteBuffer.allocate(RATIONAL_BYTES * position.length).order(order);
        for (Rational part : position) {
          raw.putInt((int) part.getNumerator()).putInt((int) part.getDenominator());
        }
        bytes.add(HexFormat.of().formatHex(raw.array()));
      }
    }
  }

  private static String fractions(Rational[] position, String between) {
    return Arrays.stream(position)
        .map(part -> part.getNumerator() + "/" + part.getDenominator())
        .collect(Collectors.joining(between));
  }
}
