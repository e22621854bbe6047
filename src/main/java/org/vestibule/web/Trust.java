package org.vestibule.web;

import java.util.Map;

/**
 * The practice's own certificate, as devices are to trust it.
 *
 * @param pem the issuer's certificate
 * @param fingerprint SHA-256 of it, as devices show it: pairs of hexadecimal digits
 * @param plainAddress where it can be had before it is trusted
 */
record Trust(String pem, String fingerprint, String plainAddress) {

  Map<String, Object> model() {
    return Map.of("fingerprint", fingerprint, "plain", plainAddress);
  }
}
