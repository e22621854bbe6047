package org.vestibule.jpeg;

/** Takes the blocks of a result in the order of its scans. */
interface BlockSink {

  /** Starts a scan. */
  void start();

  /**
   * A block of the source.
   *
   * @param component place in the frame
   * @param dc its DC coefficient
   * @param place of its first token
   */
  void block(int component, int dc, int place) throws JpegFault;

  /** A block that only fills up an MCU: as bright as the one before, without detail. */
  void padding(int component);
}
