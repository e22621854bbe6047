package org.vestibule.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Writes the sample roll into the folder given, {@code samples/roll} as a rule. */
final class MakeSamples {

  private MakeSamples() {}

  public static void main(String[] arguments) throws IOException {
    if (arguments.length != 1) {
      throw new IllegalArgumentException("say which folder the roll goes to: samples/roll");
    }
    System.setProperty("java.awt.headless", "true");
    Path folder = Path.of(arguments[0]);
    Files.createDirectories(folder);
    SampleRoll roll = new SampleRoll();
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (Shot shot : SampleRoll.plan()) {
      files.put(shot.file(), roll.bytes(shot));
    }
    files.putAll(Strays.of(files));
    for (var file : files.entrySet()) {
      Files.write(folder.resolve(file.getKey()), file.getValue());
    }
  }
}
