package org.vestibule.dicom;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;
import java.util.regex.Pattern;

/** Numbers to their little-endian and decimal-string forms (PS3.5 6.2). */
final class Numbers {

  private static final int DECIMAL_CHARACTERS = 16;

  /** PS3.5 6.2, DS; the exponent is bounded so that no text makes a number of huge size. */
  private static final Pattern DECIMAL =
      Pattern.compile("[+-]?(\\d{1,40}(\\.\\d{0,400})?|\\.\\d{1,400})([eE][+-]?\\d{1,3})?");

  private Numbers() {}

  /** Room for so many numbers. */
  static byte[] room(Vr vr, int count) {
    return new byte[Math.multiplyExact(vr.unitBytes(), count)];
  }

  static ByteBuffer littleEndian(byte[] bytes) {
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  static void putInteger(int tag, Vr vr, long number, ByteBuffer to) {
    switch (vr) {
      case US -> to.putShort((short) within(tag, number, 0, 0xFFFF));
      case SS -> to.putShort((short) within(tag, number, Short.MIN_VALUE, Short.MAX_VALUE));
      case UL -> to.putInt((int) within(tag, number, 0, 0xFFFFFFFFL));
      case SL -> to.putInt((int) within(tag, number, Integer.MIN_VALUE, Integer.MAX_VALUE));
      case UV -> to.putLong(within(tag, number, 0, Long.MAX_VALUE));
      case SV -> to.putLong(number);
      case FL, FD -> putReal(vr, (double) number, to);
      default -> throw Element.unfit(tag, vr, "whole numbers");
    }
  }

  static void putReal(Vr vr, double number, ByteBuffer to) {
    if (vr == Vr.FL) {
      to.putFloat((float) number);
    } else {
      to.putDouble(number);
    }
  }

  /** Writes a number given as text; a tag is given as eight hexadecimal digits. */
  static void putText(int tag, Vr vr, String number, ByteBuffer to) {
    switch (vr) {
      case AT -> {
        int value = Integer.parseUnsignedInt(number, 16);
        to.putShort((short) (value >>> 16)).putShort((short) value);
      }
      case FL -> to.putFloat(Float.parseFloat(number));
      case FD -> to.putDouble(Double.parseDouble(number));
      case UV -> {
        BigInteger value = new BigInteger(number);
        if (value.signum() < 0 || value.bitLength() > 64) {
          throw new IllegalArgumentException(Dictionary.keyword(tag) + " must fit 64 bits");
        }
        to.putLong(value.longValue());
      }
      default -> putInteger(tag, vr, Long.parseLong(number), to);
    }
  }

  /** A decimal string of at most 16 characters, rounded only as far as they demand. */
  static String decimalString(double number) {
    if (Double.isNaN(number) || Double.isInfinite(number)) {
      throw new IllegalArgumentException("a decimal string holds no " + number);
    }
    BigDecimal exact = new BigDecimal(Double.toString(number)).stripTrailingZeros();
    for (int digits = DECIMAL_CHARACTERS; digits > 0; digits--) {
      BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
      String plain = rounded.stripTrailingZeros().toPlainString();
      String scientific = rounded.stripTrailingZeros().toString();
      if (plain.length() <= DECIMAL_CHARACTERS) {
        return plain;
      }
      if (scientific.length() <= DECIMAL_CHARACTERS) {
        return scientific;
      }
    }
    throw new IllegalStateException("no decimal string for " + number);
  }

  /** The finite decimal number that this text writes. */
  static Optional<BigDecimal> parse(String text) {
    if (!DECIMAL.matcher(text).matches()) {
      return Optional.empty();
    }
    return Optional.of(new BigDecimal(text));
  }

  private static long within(int tag, long number, long least, long most) {
    if (number < least || number > most) {
      throw new IllegalArgumentException(
          Dictionary.keyword(tag) + " must be " + least + " to " + most + " but was " + number);
    }
    return number;
  }
}
