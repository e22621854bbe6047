package org.vestibule.deid;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.vestibule.check.PhotographicChecker;

/** The types that decide between X, Z and D are the checker's (PS3.3 edition 2025e). */
class TypesTest {

  @Test
  void theTypesAreThoseOfTheChecker() throws IOException {
    List<String> checkers =
        lines(
            PhotographicChecker.class, "vl-photographic.csv", f -> f[0] + "," + f[4] + "," + f[10]);
    List<String> ours =
        lines(Deidentifier.class, "photographic-types.csv", f -> f[0] + "," + f[1] + "," + f[2]);
    assertThat(ours).hasSizeGreaterThan(1000).isEqualTo(checkers);
  }

  private static List<String> lines(
      Class<?> room, String resource, Function<String[], String> wanted) throws IOException {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(room.getResourceAsStream(resource)),
                StandardCharsets.UTF_8))) {
      return reader.lines().skip(2).map(line -> wanted.apply(line.split(",", -1))).toList();
    }
  }
}
