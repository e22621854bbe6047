package org.vestibule.jpeg;

import java.util.List;

/** The AC coefficients of a progressive picture where its scans left them. */
final class ProgressivePicture {

  final List<ProgressivePlane> planes;
  private final byte[] quarters;

  ProgressivePicture(List<ProgressivePlane> planes, byte[] quarters) {
    this.planes = List.copyOf(planes);
    this.quarters = quarters;
  }

  /**
   * Gives back the memory of the quarters.
   *
   * @param allTaken true if every block's quarters were set back to zero
   */
  void release(boolean allTaken) {
    if (!allTaken) {
      for (ProgressivePlane plane : planes) {
        for (int index = 0; index < plane.filled.length; index++) {
          plane.forget(index);
        }
      }
    }
    SpareValues.give(quarters);
  }
}
