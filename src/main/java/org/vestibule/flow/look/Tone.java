package org.vestibule.flow.look;

/** How much attention a mark or a number asks for. */
public enum Tone {
  PLAIN("plain"),
  CARE("care");

  private final String styleName;

  Tone(String styleName) {
    this.styleName = styleName;
  }

  String styleName() {
    return styleName;
  }
}
