package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.vestibule.assign.Crop;
import org.vestibule.base.Turn;
import org.vestibule.encode.Encoder;
import org.vestibule.jpeg.CutGrid;
import org.vestibule.jpeg.Transcoded;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;

/**
 * A crop whose edges lie where the server says is kept as it was asked for, sample by sample; what
 * the transcoder keeps is itself held against jpegtran in {@code CropPeerTest}.
 */
class CutsTest {

  private static final int WIDTH = 200;
  private static final int HEIGHT = 136;

  @Test
  void aCropBetweenTwoPlacesIsKeptExactly() throws Exception {
    byte[] jpeg = PhoneJpeg.builder(SampleRoll.picture(Scene.FACE_SMILING, WIDTH, HEIGHT)).bytes();
    long seed = 20260312;
    Random dice = new Random(seed);
    for (Turn sheet : Turn.values()) {
      for (Turn shown : Turn.values()) {
        Turn further = sheet.inverse().then(shown);
        Cuts cuts = Cuts.onSheet(CutGrid.of(jpeg, shown, true).orThrow(), further);
        assertThat(cuts.width()).isEqualTo(sheet.swapsAxes() ? HEIGHT : WIDTH);
        int[] across = two(cuts.across(), dice);
        int[] down = two(cuts.down(), dice);
        Crop crop =
            new Crop(
                (double) across[0] / cuts.width(),
                (double) down[0] / cuts.height(),
                (double) across[1] / cuts.width(),
                (double) down[1] / cuts.height());
        Transcoded kept = Encoder.shown(jpeg, shown, sheet, crop, true).orThrow();
        String what = "seed " + seed + ", sheet " + sheet + ", shown " + shown + ", " + crop;
        int wide = across[1] - across[0];
        int high = down[1] - down[0];
        assertThat(kept.width()).as(what).isEqualTo(further.swapsAxes() ? high : wide);
        assertThat(kept.height()).as(what).isEqualTo(further.swapsAxes() ? wide : high);
        assertThat(kept.trimmedColumns() + kept.trimmedRows()).as(what).isZero();
      }
    }
  }

  private static int[] two(List<Integer> places, Random dice) {
    assertThat(places).isSorted().doesNotHaveDuplicates();
    int first = dice.nextInt(places.size() - 1);
    int second = first + 1 + dice.nextInt(places.size() - 1 - first);
    return new int[] {places.get(first), places.get(second)};
  }
}
