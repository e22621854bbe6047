package org.vestibule.intake;

import java.util.Locale;
import java.util.Set;

/** Files and folders that operating systems leave behind (common practice, no source). */
final class SystemFiles {

  private static final Set<String> FILES =
      Set.of(
          ".ds_store",
          "thumbs.db",
          "ehthumbs.db",
          "desktop.ini",
          ".nomedia",
          ".localized",
          ".directory",
          "icon\r");

  private static final Set<String> FOLDERS =
      Set.of(
          "$recycle.bin",
          "system volume information",
          "lost+found",
          "__macosx",
          ".spotlight-v100",
          ".trashes",
          ".trash",
          ".fseventsd",
          ".thumbnails",
          "@eadir");

  private SystemFiles() {}

  static boolean isFile(String lastName) {
    String name = lastName.toLowerCase(Locale.ROOT);
    return FILES.contains(name) || name.startsWith("._");
  }

  static boolean isFolder(String lastName) {
    String name = lastName.toLowerCase(Locale.ROOT);
    return FOLDERS.contains(name) || name.startsWith(".trash-");
  }

  static LeftOut leftOut(String name) {
    return new LeftOut(
        name,
        LeftOutKind.SYSTEM_FILE,
        "the operating system left it here",
        "nothing needs to be done",
        null);
  }
}
