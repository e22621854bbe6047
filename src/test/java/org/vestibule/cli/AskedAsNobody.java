package org.vestibule.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;

/** A process that asks several commands of one home and prints how each ended, zero bytes apart. */
public final class AskedAsNobody {

  private AskedAsNobody() {}

  /** The home folder, then command lines with spaces between their words. */
  public static void main(String[] args) {
    Map<String, String> environment = Map.of("VESTIBULE_HOME", args[0], "VESTIBULE_BY", "Nobody");
    for (int i = 1; i < args.length; i++) {
      Asked asked = Asked.in(Path.of(args[0]), environment, args[i].split(" "));
      byte[] end =
          (asked.code() + " " + asked.err() + asked.out() + "\u0000")
              .getBytes(StandardCharsets.UTF_8);
      System.out.write(end, 0, end.length);
    }
    System.out.flush();
  }
}
