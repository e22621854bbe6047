package org.vestibule.web;

/** The secret that lets one browser in where there are no accounts; each is good once. */
final class OpeningLink {

  private final Secrets secrets;
  private String secret;

  OpeningLink(Secrets secrets) {
    this.secrets = secrets;
    this.secret = secrets.next();
  }

  /** The secret that is good now. */
  synchronized String current() {
    return secret;
  }

  /** True once for each secret; from then on another one is good. */
  synchronized boolean use(String said) {
    if (!Secrets.same(secret, said)) {
      return false;
    }
    secret = secrets.next();
    return true;
  }
}
