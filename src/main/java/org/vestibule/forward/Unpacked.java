package org.vestibule.forward;

import static java.util.stream.Collectors.joining;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPInputStream;

/**
 * An answer's body without its content coding (RFC 9110 8.4). None is asked for, and gzip comes
 * from some servers all the same.
 *
 * @param bytes at most the longest answer; empty if it could not be unpacked
 * @param trouble why it could not be; empty if it could
 */
@SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
record Unpacked(byte[] bytes, boolean cutOff, String trouble) {

  /** RFC 9110 8.4.1.3: the old name means the same. */
  private static final List<String> GZIP = List.of("gzip", "x-gzip");

  /** The registered names are shorter; what is longer or odd is not repeated. */
  private static final String NAME = "[a-z0-9-]{1,20}";

  private static final int MOST_NAMES = 4;

  /**
   * Unpacks it.
   *
   * @param encodings the values of Content-Encoding
   * @param most how many bytes it may become
   */
  static Unpacked of(LimitedBody.Bytes body, List<String> encodings, int most) {
    List<String> names =
        encodings.stream()
            .flatMap(line -> Arrays.stream(line.split(",", -1)))
            .map(name -> name.strip().toLowerCase(Locale.ROOT))
            .filter(name -> !name.isEmpty() && !name.equals("identity"))
            .toList();
    if (names.isEmpty() || body.bytes().length == 0) {
      return new Unpacked(body.bytes(), body.cutOff(), "");
    }
    if (names.size() == 1 && GZIP.contains(names.get(0))) {
      return gzip(body, most);
    }
    String said =
        names.stream()
            .limit(MOST_NAMES)
            .map(name -> name.matches(NAME) ? name : "something unknown")
            .collect(joining(", "));
    return none("packed its answer as " + said + ", which we did not ask for and can't read");
  }

  private static Unpacked gzip(LimitedBody.Bytes body, int most) {
    ByteArrayOutputStream plain = new ByteArrayOutputStream();
    try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(body.bytes()))) {
      byte[] some = new byte[1 << 13];
      for (int read = in.read(some); read >= 0; read = in.read(some)) {
        int room = most - plain.size();
        plain.write(some, 0, Math.min(read, room));
        if (read > room) {
          return new Unpacked(plain.toByteArray(), true, "");
        }
      }
      return new Unpacked(plain.toByteArray(), body.cutOff(), "");
    } catch (EOFException e) {
      return body.cutOff()
          ? new Unpacked(plain.toByteArray(), true, "")
          : none("sent only a part of its packed answer");
    } catch (IOException e) {
      return none("calls its answer gzip, and it is none");
    }
  }

  private static Unpacked none(String what) {
    return new Unpacked(new byte[0], false, "the archive " + what);
  }
}
