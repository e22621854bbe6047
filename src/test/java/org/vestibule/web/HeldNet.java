package org.vestibule.web;

/**
 * A slow network inside the browser: answers whose address holds a word wait until the test lets
 * them go, so that what happens meanwhile does not depend on time.
 */
final class HeldNet {

  private final Browser browser;

  private HeldNet(Browser browser) {
    this.browser = browser;
  }

  /** Holds back what scripts fetch from addresses that match this expression, from now on. */
  static HeldNet hold(Browser browser, String addresses) {
    browser
        .driver()
        .executeScript(
            """
            const real = window.fetch;
            const those = new RegExp(arguments[0]);
            window.held = [];
            window.fetch = (address, how) =>
              those.test(String(address)) && window.held
                ? new Promise((go, stop) => window.held.push(() => real(address, how).then(go, stop)))
                : real(address, how);
            """,
            addresses);
    return new HeldNet(browser);
  }

  /** Waits until so many are held. */
  void until(int many) {
    browser.until("window.held.length === " + many);
  }

  /** How many are held. */
  long count() {
    return (Long) browser.driver().executeScript("return window.held.length");
  }

  /** Lets the one at this place go, the first one asked for being 0. */
  void letGo(int place) {
    browser.driver().executeScript("window.held[arguments[0]]()", place);
  }

  /** Lets all go, and holds nothing any more. */
  void letAllGo() {
    browser
        .driver()
        .executeScript(
            "const held = window.held; window.held = null; held.forEach((one) => one())");
  }
}
