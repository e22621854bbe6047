package org.vestibule.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Where a page leads on to: always a place of ours. */
final class Then {

  private static final int LONGEST = 2000;

  private Then() {}

  /** The address if it is a path of ours, else the first page. */
  static String safe(String address) {
    boolean ours =
        address.length() <= LONGEST
            && address.startsWith("/")
            && !address.startsWith("//")
            && address.chars().allMatch(c -> c > ' ' && c < 127 && c != '\\');
    return ours ? address : "/";
  }

  static String encoded(String address) {
    return URLEncoder.encode(address, StandardCharsets.UTF_8);
  }
}
