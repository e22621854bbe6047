package org.vestibule.jpeg;

/**
 * A rectangle of a component's blocks as stored.
 *
 * @param left first column
 * @param top first row
 * @param wide columns
 * @param high rows
 */
record BlockBox(int left, int top, int wide, int high) {

  boolean has(int row, int column) {
    return row >= top && row < top + high && column >= left && column < left + wide;
  }
}
