package org.vestibule.cli;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** What a person reads: answers go to the output, reasons and progress to the messages. */
final class Console {

  private static final int WIDTH = 100;

  private final PrintStream out;
  private final PrintStream err;
  private final boolean interactive;

  /**
   * @param interactive true if a person watches, so that progress may overwrite its own line
   */
  Console(PrintStream out, PrintStream err, boolean interactive) {
    this.out = new PrintStream(out, true, StandardCharsets.UTF_8);
    this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
    this.interactive = interactive;
  }

  /** True if a person watches. */
  boolean isInteractive() {
    return interactive;
  }

  /** One line of the answer. */
  void say(String line) {
    out.println(line);
  }

  /** An empty line. */
  void gap() {
    out.println();
  }

  /** A heading with a gap before it. */
  void heading(String text) {
    out.println();
    out.println(text);
    out.println("-".repeat(text.length()));
  }

  /** Text wrapped to the width of a page, each line indented. */
  void wrapped(int indent, String text) {
    for (String line : wrap(text, WIDTH - indent)) {
      out.println(" ".repeat(indent) + line);
    }
  }

  /** Why something waits or was left out, and what to do about it. */
  void reason(int indent, String why, String advice) {
    wrapped(indent, "Why: " + Ended.of(why));
    wrapped(indent, "What to do: " + Ended.of(advice));
  }

  /** A reason or a complaint. */
  void complain(String line) {
    err.println(line);
  }

  /** Progress, shown only where a person watches. */
  void progress(String line) {
    if (interactive) {
      err.print("\r" + line + "\u001b[K");
      err.flush();
    }
  }

  /** Ends the line that progress has been overwriting. */
  void progressDone() {
    if (interactive) {
      err.print("\r\u001b[K");
      err.flush();
    }
  }

  /** For help texts. */
  PrintStream answers() {
    return out;
  }

  PrintStream errors() {
    return err;
  }

  private static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (line.length() > 0 && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
