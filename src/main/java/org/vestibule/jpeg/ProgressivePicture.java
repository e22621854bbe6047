package org.vestibule.jpeg;

import java.util.List;

/** The AC coefficients of a progressive picture where its scans left them. */
final class ProgressivePicture {

  final List<ProgressivePlane> planes;
  private final short[] magnitudes;

  ProgressivePicture(List<ProgressivePlane> planes, short[] magnitudes) {
    this.planes = List.copyOf(planes);
    this.magnitudes = magnitudes;
  }

  /**
   * Gives back the memory of the magnitudes.
   *
   * @param allTaken true if every block's magnitudes were set back to zero
   */
  void release(boolean allTaken) {
    if (!allTaken) {
      for (ProgressivePlane plane : planes) {
        for (int index = 0; index < plane.filled.length; index++) {
          plane.forget(index);
        }
      }
    }
    SpareValues.give(magnitudes);
  }
}
