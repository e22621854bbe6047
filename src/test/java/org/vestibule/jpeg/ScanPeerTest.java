package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** Scan scripts of every kind, coded by libjpeg-turbo's cjpeg and unpacked by its jpegtran. */
final class ScanPeerTest {

  private static final String ROUGH = "0,1,2: 0-0, 0, 1; 0: 1-63, 0, 2;";

  private final Peer peer = new Peer();

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0; 1; 2;",
        "0; 1 2;",
        "0,1,2: 0-0, 0, 0; 0: 1-63, 0, 0; 1: 1-63, 0, 0; 2: 1-63, 0, 0;",
        "0: 0-0,0,0; 1: 0-0,0,0; 2: 0-0,0,0; 2: 1-63,0,0; 0: 1-5,0,0; 0: 6-63,0,0; 1: 1-63,0,0;",
        "0,1,2: 0-0,0,2; 0: 1-9,0,3; 0: 10-63,0,3; 1: 1-63,0,3; 2: 1-63,0,3; 0,1,2: 0-0,2,1;"
            + " 0: 1-63,3,2; 1: 1-63,3,2; 2: 1-63,3,2; 0,1,2: 0-0,1,0; 0: 1-63,2,1; 0: 1-63,1,0;"
            + " 1: 1-63,2,1; 1: 1-63,1,0; 2: 1-63,2,1; 2: 1-63,1,0;",
        // DC scans of one component after its last AC scan.
        "0,1,2: 0-0,0,1; 0: 1-63,0,1; 1: 1-63,0,1; 2: 1-63,0,1; 0: 1-63,1,0; 1: 1-63,1,0;"
            + " 2: 1-63,1,0; 0: 0-0,1,0; 1: 0-0,1,0; 2: 0-0,1,0;",
        // The last bits in two bands, and some of them in a first scan.
        "0,1,2: 0-0,0,0; 0: 1-20,0,2; 0: 21-63,0,0; 1: 1-63,0,1; 2: 1-40,0,0; 2: 41-63,0,0;"
            + " 0: 1-20,2,1; 0: 5-20,1,0; 0: 1-4,1,0; 1: 9-63,1,0; 1: 1-8,1,0;",
        ROUGH
      })
  void readsEveryScript(String script) throws IOException {
    for (String restart : new String[] {"0", "5B"}) {
      byte[] source = coded(script, restart);
      ReferenceTest.requireFast(source);
      for (Turn turn : new Turn[] {Turn.ROTATE_90, Turn.FLIP_HORIZONTAL}) {
        requireAsThePeer(source, turn, script + restart);
      }
    }
  }

  /** Blocks whose codes take several words of bits. */
  @Test
  void readsFullBlocks() {
    for (String quality : new String[] {"60", "75", "85", "92", "100"}) {
      byte[] source =
          peer.compress(Peer.picture(96, 96, false, 5), "-progressive", "-quality", quality);

      ReferenceTest.requireFast(source);
      for (Turn turn : new Turn[] {Turn.TRANSPOSE, Turn.FLIP_VERTICAL}) {
        requireAsThePeer(source, turn, quality);
      }
    }
  }

  private void requireAsThePeer(byte[] source, Turn turn, String what) {
    byte[] theirs = peer.transform(source, Peer.options(turn));

    Transcoded ours = Transcoder.transcode(source, TranscodePlan.turned(turn)).orThrow();

    Peer.assertSame(
        Coefficients.decode(ours.bytes()).orThrow(), Coefficients.decode(theirs).orThrow(), what);
    assertThat(peer.pixels(ours.bytes())).isEqualTo(peer.pixels(theirs));
    assertThat(JpegStructure.read(ours.bytes()).orThrow().scans()).isEqualTo(1);
  }

  @Test
  void saysThatTheFinestDetailIsMissing() throws IOException {
    byte[] rough = coded(ROUGH, "0");

    assertThat(Coefficients.decode(rough).orThrow().warnings())
        .containsExactly("the picture's scans end before its finest detail");
    assertThat(refusal(Arrays.copyOf(rough, rough.length - 2)))
        .isEqualTo("the picture's data ends before all its scans are complete");
  }

  @Test
  void refusesAProgressivePictureCutBetweenScans() throws IOException {
    byte[] whole = coded("0,1,2: 0-0, 0, 0; 0: 1-63, 0, 0; 1: 1-63, 0, 0; 2: 1-63, 0, 0;", "0");
    JpegSegment last = null;
    for (JpegSegment segment : JpegStructure.read(whole).orThrow().segments()) {
      last = segment;
    }

    assertThat(refusal(Arrays.copyOf(whole, (int) last.offsetBytes())))
        .isEqualTo("the picture's data ends before all its scans are complete");
    assertThat(Coefficients.decode(Arrays.copyOf(whole, whole.length - 2)).orThrow().warnings())
        .containsExactly("the file ends without an end marker (EOI)");
  }

  private static String refusal(byte[] jpeg) {
    Outcome<Coefficients> outcome = Coefficients.decode(jpeg);
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Coefficients>) outcome).reason();
  }

  private byte[] coded(String script, String restart) throws IOException {
    Path file = Files.writeString(folder.resolve("scans.txt"), script);
    return peer.compress(
        Peer.picture(48, 64, false, 3), "-scans", file.toString(), "-restart", restart);
  }
}
