package org.vestibule.release;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.vestibule.assign.Crop;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.encode.Codestream;
import org.vestibule.jpeg.MetadataStrip;

/**
 * Writes the pictures as a release would hold them, sample by sample, for a person who is to look
 * before anything leaves. Nothing else is made of them.
 */
public final class Proofs {

  private Proofs() {}

  /**
   * Writes a JPEG file for each picture, all of them or none.
   *
   * @param pictures by the name that its file gets, without ending
   * @param folder where nothing is yet
   */
  public static Outcome<Integer> write(Map<String, Original> pictures, Path folder)
      throws IOException {
    if (pictures.isEmpty()) {
      return Outcome.refused("there is nothing to look at", "name at least one photograph");
    }
    if (Files.exists(folder)) {
      return taken(folder);
    }
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (Map.Entry<String, Original> picture : pictures.entrySet()) {
      Outcome<byte[]> jpeg = jpeg(picture.getValue(), picture.getKey());
      if (jpeg instanceof Refused<byte[]> refused) {
        return refused.as();
      }
      files.put(picture.getKey() + ".jpg", jpeg.orThrow());
    }
    Path parent = Optional.ofNullable(folder.toAbsolutePath().getParent()).orElse(folder);
    if (!Files.isDirectory(parent)) {
      return Outcome.refused(
          "there is no folder " + parent.getFileName() + " for the pictures", "make it first");
    }
    Path draft = Files.createTempDirectory(parent, ".look-");
    try {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Files.write(draft.resolve(file.getKey()), file.getValue());
      }
      Files.move(draft, folder);
      return Outcome.done(files.size());
    } catch (FileAlreadyExistsException faster) {
      return taken(folder);
    } finally {
      delete(draft);
    }
  }

  private static Outcome<Integer> taken(Path folder) {
    return Outcome.refused(
        folder.getFileName() + " is already there", "name another place; nothing was overwritten");
  }

  private static Outcome<byte[]> jpeg(Original original, String name) throws IOException {
    Crop crop = original.crop();
    Outcome<DataSet> whole =
        original.file().read().then(Part10Reader::read).map(read -> read.data());
    Outcome<DataSet> part =
        crop == null ? whole : whole.then(data -> PrivacyCrop.of(data, crop, uid -> uid, name));
    return part.then(Proofs::bare);
  }

  /** As a copy holds it, whose picture is stripped to its tables and coded data. */
  private static Outcome<byte[]> bare(DataSet data) {
    return Codestream.of(data)
        .then(MetadataStrip::of)
        .map(picture -> JpegCopy.of(picture.bytes(), data));
  }

  private static void delete(Path draft) throws IOException {
    if (!Files.exists(draft)) {
      return;
    }
    List<Path> all;
    try (Stream<Path> walk = Files.walk(draft)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.deleteIfExists(path);
    }
  }
}
