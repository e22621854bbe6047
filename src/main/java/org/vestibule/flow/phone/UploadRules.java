package org.vestibule.flow.phone;

/**
 * How much phones may send.
 *
 * @param largestBytes the longest file
 * @param mostFiles by one page
 * @param mostBytes by one page in all
 * @param keptFreeBytes what has to stay free on the practice's disk
 */
public record UploadRules(long largestBytes, int mostFiles, long mostBytes, long keptFreeBytes) {

  /** 100 MB a file, 300 files and 4 GB a visit, 1 GB kept free. */
  public static final UploadRules DEFAULT =
      new UploadRules(100_000_000L, 300, 4_000_000_000L, 1_000_000_000L);
}
