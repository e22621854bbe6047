package org.vestibule.web;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.vestibule.flow.WebRules;

/**
 * By which names the server may be called. A page elsewhere that has its own name point here (DNS
 * rebinding) calls by another one.
 */
final class Hosts {

  private static final List<String> LOOPBACK = List.of("127.0.0.1", "localhost", "[::1]");

  private final Set<String> names = new HashSet<>();

  Hosts(WebRules rules) {
    names.addAll(LOOPBACK);
    names.add(bracketed(rules.address()));
    rules.names().forEach(name -> names.add(name.toLowerCase(Locale.ROOT)));
  }

  /** True if the header {@code Host} (RFC 9110, 7.2) says one of them, with or without a port. */
  boolean mayBe(String host) {
    return names.contains(host.toLowerCase(Locale.ROOT).replaceFirst(":\\d{1,5}$", ""));
  }

  /** True for an address that only this machine reaches. */
  static boolean isLoopback(String address) {
    return LOOPBACK.contains(bracketed(address)) || address.matches("127(\\.\\d{1,3}){3}");
  }

  /** An address as it stands in a URL (RFC 3986, 3.2.2). */
  static String bracketed(String address) {
    return address.contains(":") && !address.startsWith("[") ? "[" + address + "]" : address;
  }
}
