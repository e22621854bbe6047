package org.vestibule.web;

import java.io.IOException;
import java.util.Optional;
import org.vestibule.assign.PersonWords;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.FilingPreview;

/**
 * The pictures by which people decide: as the camera turned them, and as they will be shown. All
 * are made anew from their pixels; the file itself is never handed out.
 */
final class AskedPictures {

  private static final int SMALL_SIDE = 440;
  private static final int LARGE_SIDE = 1400;

  private final Site site;
  private final FilingPreview preview;

  AskedPictures(Site site) {
    this.site = site;
    this.preview = new FilingPreview(site.practice(), site.made());
  }

  /** As a person is asked about it: mirror images are still mirror images. */
  Answer large(Asked asked) throws IOException {
    return picture(asked, LARGE_SIDE);
  }

  /** The same small. */
  Answer small(Asked asked) throws IOException {
    return picture(asked, SMALL_SIDE);
  }

  private Answer picture(Asked asked, int side) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    return photo.isEmpty() ? Answers.notFound(asked) : jpeg(preview.asked(photo.get(), side));
  }

  /** As it will be displayed, by the words of the query. */
  Answer shown(Asked asked) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    if (photo.isEmpty()) {
      return Answers.notFound(asked);
    }
    PersonWords words = Labels.words(asked::query, asked.visitor().person());
    return jpeg(preview.shown(photo.get(), words));
  }

  private static Answer jpeg(Outcome<byte[]> picture) {
    if (picture instanceof Done<byte[]> done) {
      return Answer.bytes("image/jpeg", done.value());
    }
    Refused<byte[]> refused = (Refused<byte[]>) picture;
    int status = refused.kind() == Outcome.Kind.BUSY ? 503 : 409;
    return Answer.refused(status, refused.reason(), refused.advice());
  }
}
