package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Turn;

/** A turned block's samples, by the formula of ITU-T T.81 A.3.3, are the block's samples turned. */
final class BlockTurnTest {

  @ParameterizedTest
  @EnumSource(Turn.class)
  void turnsSamplesByTurningCoefficients(Turn turn) {
    long seed = 20251;
    Random random = new Random(seed);
    double[][] coefficients = new double[8][8];
    for (double[] row : coefficients) {
      for (int u = 0; u < 8; u++) {
        row[u] = random.nextInt(401) - 200;
      }
    }
    BlockTurn inside = new BlockTurn(turn);
    double[][] turned = new double[8][8];
    for (int position = 0; position < 64; position++) {
      int from = Zigzag.natural(inside.from[position]);
      int to = Zigzag.natural(position);
      turned[to / 8][to % 8] = inside.sign[position] * coefficients[from / 8][from % 8];
    }

    double[][] before = inverse(coefficients);
    double[][] after = inverse(turned);

    for (int y = 0; y < 8; y++) {
      for (int x = 0; x < 8; x++) {
        int row = turn.flipsVertically() ? 7 - y : y;
        int column = turn.flipsHorizontally() ? 7 - x : x;
        double expected = turn.swapsAxes() ? before[column][row] : before[row][column];
        assertThat(after[y][x])
            .as("%s %d,%d seed %d", turn, x, y, seed)
            .isCloseTo(expected, within(1e-9));
      }
    }
  }

  @Test
  void changesTheSignOfOddFrequenciesAlongTheMirroredAxis() {
    BlockTurn flip = new BlockTurn(Turn.FLIP_HORIZONTAL);

    // Zigzag 1 is row 0, column 1; zigzag 2 is row 1, column 0; zigzag 4 is row 1, column 1.
    assertThat(flip.sign[0]).isEqualTo(1);
    assertThat(flip.sign[1]).isEqualTo(-1);
    assertThat(flip.sign[2]).isEqualTo(1);
    assertThat(flip.sign[4]).isEqualTo(-1);
    assertThat(new BlockTurn(Turn.ROTATE_180).sign[4]).isEqualTo(1);
    assertThat(new BlockTurn(Turn.TRANSPOSE).from[1]).isEqualTo(2);
  }

  @Test
  void knowsTheZigzag() {
    // ITU-T T.81 Figure A.6: first and last places by row and column.
    int[] expected = {0, 1, 8, 16, 9, 2, 3, 10, 17, 24, 32, 25, 18, 11, 4, 5};
    for (int i = 0; i < expected.length; i++) {
      assertThat(Zigzag.natural(i)).isEqualTo(expected[i]);
    }
    assertThat(Zigzag.natural(35)).isEqualTo(56);
    assertThat(Zigzag.natural(62)).isEqualTo(62);
    assertThat(Zigzag.natural(63)).isEqualTo(63);
    assertThat(Zigzag.position(7, 0)).isEqualTo(35);
  }

  private static double[][] inverse(double[][] coefficients) {
    double[][] samples = new double[8][8];
    for (int y = 0; y < 8; y++) {
      for (int x = 0; x < 8; x++) {
        double sum = 0;
        for (int v = 0; v < 8; v++) {
          for (int u = 0; u < 8; u++) {
            double norm = (u == 0 ? Math.sqrt(0.5) : 1) * (v == 0 ? Math.sqrt(0.5) : 1);
            sum +=
                norm
                    * coefficients[v][u]
                    * Math.cos((2 * x + 1) * u * Math.PI / 16)
                    * Math.cos((2 * y + 1) * v * Math.PI / 16);
          }
        }
        samples[y][x] = sum / 4;
      }
    }
    return samples;
  }
}
