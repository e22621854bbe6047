package org.vestibule.web;

import io.javalin.http.Context;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import org.vestibule.flow.OnPages;
import org.vestibule.words.Language;

/** What was asked: the address, the form, and by whom. */
final class Asked {

  private final Context context;
  private final Route route;
  private final Visitor visitor;
  private final Language language;
  private final String client;

  /**
   * @param client who asks, by network address
   */
  Asked(Context context, Route route, Visitor visitor, Language language, String client) {
    this.context = context;
    this.route = route;
    this.visitor = visitor;
    this.language = language;
    this.client = client;
  }

  /** The value at {@code {name}} of the route's path. */
  String path(String name) {
    return context.pathParam(name);
  }

  /** A value of the address's query; empty if it is not there or blank. */
  String query(String name) {
    return Optional.ofNullable(context.queryParam(name)).map(String::strip).orElse("");
  }

  /** All values of that name, without blank ones. */
  List<String> queries(String name) {
    return filled(context.queryParams(name));
  }

  /** A value of the form; empty if it is not there or blank. */
  String form(String name) {
    return Optional.ofNullable(context.formParam(name)).map(String::strip).orElse("");
  }

  /** A value of the form as it is, blanks and all, such as a password. */
  String exactly(String name) {
    return Optional.ofNullable(context.formParam(name)).orElse("");
  }

  /** All values of that name, without blank ones. */
  List<String> forms(String name) {
    return filled(context.formParams(name));
  }

  private static List<String> filled(List<String> values) {
    return values.stream().map(String::strip).filter(value -> !value.isEmpty()).toList();
  }

  /** A header; empty if it is not there. */
  String header(String name) {
    return Optional.ofNullable(context.header(name)).orElse("");
  }

  /** The body, for a route that takes bytes; longer than the route allows it never is. */
  InputStream body() {
    return context.bodyInputStream();
  }

  /** Path and query, as a page of ours may lead back to. */
  String address() {
    String query = context.queryString();
    return context.path() + (query == null ? "" : "?" + query);
  }

  /** The query as it was asked, without the question mark. */
  String queryText() {
    return Optional.ofNullable(context.queryString()).orElse("");
  }

  /** Remembers the language that was chosen here. */
  void choose(Language chosen) {
    Cookies.language(context, chosen);
  }

  Route route() {
    return route;
  }

  Visitor visitor() {
    return visitor;
  }

  Language language() {
    return language;
  }

  String client() {
    return client;
  }

  /** Who asks, as the site's audit repository is told. */
  OnPages who() {
    return new OnPages(visitor.person(), visitor.account(), client);
  }
}
