package org.vestibule.jpeg;

import java.util.List;
import org.vestibule.base.Outcome;

/**
 * A picture as its quantised DCT coefficients: what a JPEG really holds, before any arithmetic
 * (ITU-T T.81 A.3.4).
 */
public final class Coefficients {

  private final JpegStructure structure;
  private final List<ComponentBlocks> components;
  private final List<String> warnings;

  Coefficients(JpegStructure structure, List<ComponentBlocks> components, List<String> warnings) {
    this.structure = structure;
    this.components = List.copyOf(components);
    this.warnings = List.copyOf(warnings);
  }

  /** Decodes a file's first picture; a damaged, incomplete or unsuited one is refused. */
  public static Outcome<Coefficients> decode(byte[] bytes) {
    try {
      return Outcome.done(PictureDecoder.decode(bytes));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** The structure of the file that was decoded. */
  public JpegStructure structure() {
    return structure;
  }

  /** The frame header. */
  public JpegFrame frame() {
    return structure.frame();
  }

  /** Recoverable oddities of structure and scans. */
  public List<String> warnings() {
    return warnings;
  }

  /** Number of components. */
  public int componentCount() {
    return components.size();
  }

  /** Blocks across a component, without padding. */
  public int blocksWide(int component) {
    return components.get(component).grid.wide();
  }

  /** Blocks down a component, without padding. */
  public int blocksHigh(int component) {
    return components.get(component).grid.high();
  }

  /**
   * The quantisation step of a coefficient.
   *
   * @param row vertical frequency, 0 to 7
   * @param column horizontal frequency, 0 to 7
   */
  public int quantisation(int component, int row, int column) {
    return components.get(component).quantisation[Zigzag.position(row, column)];
  }

  /**
   * A quantised coefficient.
   *
   * @param row vertical frequency, 0 to 7
   * @param column horizontal frequency, 0 to 7
   */
  public int value(int component, int blockRow, int blockColumn, int row, int column) {
    ComponentBlocks blocks = components.get(component);
    return blocks.values[blocks.base(blockRow, blockColumn) + Zigzag.position(row, column)];
  }

  /** Each component's quantisation in zigzag order. */
  List<int[]> quantisation() {
    return components.stream().map(blocks -> blocks.quantisation).toList();
  }

  List<ComponentBlocks> components() {
    return components;
  }
}
