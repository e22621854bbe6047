package org.vestibule.web;

import java.util.Set;

/**
 * One address.
 *
 * @param method GET or POST or PUT
 * @param path with {@code {name}} where something of the address is a value
 * @param roles who may ask
 * @param page what answers
 * @param menu the key of its word in the menu; empty if it is not there
 * @param decides true if the ledger keeps a person's name with what is done here, so that somebody
 *     has to have said who they are
 * @param mostBytes how long a request's body may be
 */
record Route(
    String method,
    String path,
    Set<Role> roles,
    Page page,
    String menu,
    boolean decides,
    long mostBytes) {

  private static final long FORM_BYTES = 64 * 1024;

  Route {
    roles = Set.copyOf(roles);
  }

  static Route get(String path, Set<Role> roles, Page page) {
    return new Route("GET", path, roles, page, "", false, 0);
  }

  static Route post(String path, Set<Role> roles, Page page) {
    return new Route("POST", path, roles, page, "", false, FORM_BYTES);
  }

  /** For bytes that the page reads as a stream. */
  static Route put(String path, Set<Role> roles, Page page, long mostBytes) {
    return new Route("PUT", path, roles, page, "", false, mostBytes);
  }

  /** The same, with a place in the menu. */
  Route inMenu(String wordKey) {
    return new Route(method, path, roles, page, wordKey, decides, mostBytes);
  }

  /** The same, for a person who said who they are. */
  Route byAPerson() {
    return new Route(method, path, roles, page, menu, true, mostBytes);
  }

  /** True if asking changes nothing, so that no proof is needed that a page of ours asks. */
  boolean isSafe() {
    return method.equals("GET");
  }
}
