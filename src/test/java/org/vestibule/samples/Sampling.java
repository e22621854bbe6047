package org.vestibule.samples;

/** How often luma is sampled for one sample of chroma, across and down. */
public enum Sampling {
  S444(1, 1),
  S422(2, 1),
  S420(2, 2),
  S440(1, 2);

  final int across;
  final int down;

  Sampling(int across, int down) {
    this.across = across;
    this.down = down;
  }
}
