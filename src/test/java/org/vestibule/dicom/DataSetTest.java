package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Data sets share nothing, hold only what fits, and give back what was put in (PS3.5 6.2). */
class DataSetTest {

  @Test
  void nothingIsShared() {
    DataSet item = new DataSet().put(Tags.CodeValue, "1");
    byte[] profile = {1, 2};
    DataSet data = new DataSet().put(Tags.ViewCodeSequence, item).put(Tags.ICCProfile, profile);
    DataSet copy = data.copy();
    item.put(Tags.CodeValue, "2");
    profile[0] = 9;
    data.item(Tags.ViewCodeSequence).orElseThrow().put(Tags.CodeValue, "3");
    data.bytes(Tags.ICCProfile)[0] = 9;
    copy.remove(Tags.ViewCodeSequence);

    assertThat(data.item(Tags.ViewCodeSequence).orElseThrow().string(Tags.CodeValue)).contains("1");
    assertThat(data.bytes(Tags.ICCProfile)).containsExactly(1, 2);
    assertThat(data).isNotEqualTo(copy);
  }

  @Test
  void elementsStandInUnsignedOrderOfTheirTags() {
    DataSet data = new DataSet().put(0xFFFCFFFC, new byte[0]).put(Tags.Rows, 1);
    data.put(Tags.PatientID, "a");
    assertThat(data)
        .extracting(Element::tag)
        .containsExactly(Tags.PatientID, Tags.Rows, 0xFFFCFFFC);
  }

  @Test
  void numbersAreHeldToTheirRange() {
    assertThatThrownBy(() -> new DataSet().put(Tags.Rows, 65536))
        .hasMessage("Rows must be 0 to 65535 but was 65536");
    assertThatThrownBy(() -> new DataSet().put(Tags.PatientName, 1L))
        .hasMessage(
            "PatientName (0010,0010) has value representation PN, which doesn't take whole"
                + " numbers");
    assertThatThrownBy(() -> new DataSet().put(Tags.PatientName, new DataSet()))
        .hasMessageContaining("doesn't take items");
    assertThatThrownBy(() -> new DataSet().put(Tags.ImageComments, "a", "b"))
        .hasMessageContaining("doesn't take more than one value");
  }

  @Test
  void decimalStringsKeepToSixteenCharacters() {
    double[] numbers = {
      0.1, 1.0 / 3, -1.0 / 3, 1e-7, 123456789012345680.0, 1e300, -1.5e-300, 0, 100
    };
    for (double number : numbers) {
      DataSet data = new DataSet().put(Tags.FNumber, number);
      String text = data.string(Tags.FNumber).orElseThrow();
      assertThat(text).hasSizeLessThanOrEqualTo(16);
      double back = data.number(Tags.FNumber).orElseThrow();
      assertThat(Math.abs(back - number)).as(text).isLessThanOrEqualTo(Math.abs(number) * 1e-8);
    }
    assertThat(new DataSet().put(Tags.FNumber, 1.8).string(Tags.FNumber)).contains("1.8");
    assertThat(new DataSet().put(Tags.FNumber, 100).string(Tags.FNumber)).contains("100");
  }

  @Test
  void gettersAreEmptyForWhatIsNotOfTheirKind() {
    DataSet data =
        new DataSet()
            .put(Tags.StudyDate, "20260230")
            .put(Tags.StudyTime, "0907")
            .put(Tags.SeriesNumber, "1.5")
            .putEmpty(Tags.PatientID);
    assertThat(data.date(Tags.StudyDate)).isEmpty();
    assertThat(data.time(Tags.StudyTime)).contains(LocalTime.of(9, 7));
    assertThat(data.integer(Tags.SeriesNumber)).isEmpty();
    assertThat(data.number(Tags.SeriesNumber)).hasValue(1.5);
    assertThat(data.string(Tags.PatientID)).isEmpty();
    assertThat(data.element(Tags.PatientID).orElseThrow().isEmpty()).isTrue();
    assertThat(data.put(Tags.SeriesNumber, "1e999999999").decimal(Tags.SeriesNumber)).isEmpty();
  }

  @Test
  void datesAndTimesComeBack() {
    DataSet data =
        new DataSet()
            .put(Tags.StudyDate, LocalDate.of(1980, 2, 29))
            .put(Tags.StudyTime, LocalTime.of(23, 59, 59, 123_456_000))
            .put(Tags.AcquisitionDateTime, LocalDateTime.of(2026, 3, 5, 9, 7));
    assertThat(data.date(Tags.StudyDate)).contains(LocalDate.of(1980, 2, 29));
    assertThat(data.string(Tags.StudyTime)).contains("235959.123456");
    assertThat(data.time(Tags.StudyTime)).contains(LocalTime.of(23, 59, 59, 123_456_000));
    assertThat(data.string(Tags.AcquisitionDateTime)).contains("20260305090700");
  }

  @Test
  void spacesThatCarryNoMeaningAreLeftOut() {
    DataSet data =
        new DataSet()
            .put(Tags.PatientID, " A 1 ")
            .put(Tags.ImageComments, "  indented  ")
            .put(Tags.ImageType, "ORIGINAL ", "", "X");
    assertThat(data.string(Tags.PatientID)).contains("A 1");
    assertThat(data.string(Tags.ImageComments)).contains("  indented");
    assertThat(data.strings(Tags.ImageType)).isEqualTo(List.of("ORIGINAL", "", "X"));
  }
}
