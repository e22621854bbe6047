package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;

/**
 * What decides a picture's coefficients is seen, each part of it, and what is odd is left alone.
 */
final class CodedScanTest {

  private static final String WRITTEN_ANEW = "-optimize";

  private final byte[] source = new Peer().compress(Peer.picture(70, 45, false, 3), options("1B"));

  private static String[] options(String restart) {
    return new String[] {"-quality", "90", "-sample", "2x2", "-restart", restart};
  }

  @ParameterizedTest
  @ValueSource(strings = {"2x2", "2x1", "1x2", "1x1"})
  void aStrippedPictureIsTheSameAndIsProvedSo(String sampling) {
    byte[] photo =
        new Peer().compress(Peer.picture(70, 45, false, 4), "-quality", "90", "-sample", sampling);
    byte[] result = Transcoder.transcode(photo, TranscodePlan.AS_IS).orThrow().bytes();

    assertThat(same(photo, result)).isTrue();
    assertThat(Proof.of(photo, TranscodePlan.AS_IS, result)).isInstanceOf(Outcome.Done.class);
  }

  /** T.81 B.2.4.1: the same steps, one byte or two bytes each. */
  @Test
  void tablesOfTwoBytesAreRead() {
    byte[] wide = new Peer().compress(Peer.picture(24, 24, false, 6), "-quality", "1");

    assertThat(same(wide, wide)).isTrue();
    assertThat(changed(wide, Markers.DQT, 2, 1)).isTrue();
  }

  @Test
  void everyPartThatDecidesTellsTwoApart() {
    assertThat(changed(source, Markers.DQT, 7, 1)).as("a quantisation step").isTrue();
    assertThat(changed(source, Markers.DHT, 17, 1)).as("a Huffman symbol").isTrue();
    assertThat(changed(source, Markers.DRI, 1, 1)).as("the restart interval").isTrue();
    assertThat(changed(source, Markers.SOF0, 4, 2)).as("the width").isTrue();
    assertThat(changed(source, Markers.SOF0, 7, 3)).as("the sampling").isTrue();
    assertThat(changed(source, Markers.SOS, 2, 0x10)).as("a component's DC table").isTrue();
    assertThat(changed(source, Markers.SOS, 2, 0x01)).as("a component's AC table").isTrue();
    assertThat(changed(source, Markers.SOS, 12, 1)).as("a coded byte").isTrue();
  }

  @Test
  void whatIsOddIsLeftToTheDecoder() {
    byte[] progressive =
        new Peer().compress(Peer.picture(24, 24, false, 6), "-quality", "90", "-progressive");
    assertThat(CodedScan.of(progressive, structure(progressive))).isNull();
    assertThat(odd(Markers.DHT, 0, 0x20)).as("a table of no kind").isTrue();
    assertThat(odd(Markers.DHT, 1, 0xFF)).as("more symbols than there are bytes").isTrue();
    assertThat(odd(Markers.DQT, 0, 0x20)).as("steps of three bytes").isTrue();
    assertThat(odd(Markers.DQT, 0, 0x07)).as("a table that can't be").isTrue();
    assertThat(odd(Markers.SOS, 7, 1)).as("a first coefficient that is not the first").isTrue();
    assertThat(odd(Markers.SOS, 9, 1)).as("a bit position").isTrue();
    assertThat(odd(Markers.SOS, 1, 9)).as("another component").isTrue();
  }

  /** The proof goes on to compare coefficients where the bytes are others. */
  @Test
  void theSameCoefficientsInOtherBytesAreProvedByDecoding() {
    byte[] anew = new Peer().transform(source, List.of(WRITTEN_ANEW, "-copy", "none"));
    byte[] bare = Transcoder.transcode(anew, TranscodePlan.AS_IS).orThrow().bytes();

    assertThat(same(source, bare)).isFalse();
    assertThat(Proof.of(source, TranscodePlan.AS_IS, bare)).isInstanceOf(Outcome.Done.class);
  }

  /** True if a file and the same file with one byte of a segment changed are told apart. */
  private static boolean changed(byte[] file, int marker, int at, int value) {
    byte[] other = with(file, marker, bytes -> bytes[at] ^= (byte) value);
    CodedScan read = CodedScan.of(other, structure(other));
    return read == null || !CodedScan.of(file, structure(file)).isSameAs(read);
  }

  private boolean odd(int marker, int at, int value) {
    byte[] file = with(source, marker, bytes -> bytes[at] = (byte) value);
    return CodedScan.of(file, structure(source)) == null;
  }

  /** The file with the data of its first segment of a kind, and all that follows, changed. */
  private static byte[] with(byte[] file, int marker, Consumer<byte[]> change) {
    int start =
        structure(file).segments().stream()
            .filter(segment -> segment.marker() == marker)
            .findFirst()
            .orElseThrow()
            .dataStart();
    byte[] data = Arrays.copyOfRange(file, start, file.length);
    change.accept(data);
    return Assembled.join(Arrays.copyOf(file, start), data);
  }

  private static boolean same(byte[] one, byte[] other) {
    CodedScan first = CodedScan.of(one, structure(one));
    CodedScan second = CodedScan.of(other, structure(other));
    assertThat(first).isNotNull();
    assertThat(second).isNotNull();
    return first.isSameAs(second);
  }

  private static JpegStructure structure(byte[] file) {
    return JpegStructure.read(file).orThrow();
  }
}
