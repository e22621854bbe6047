package org.vestibule.web;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Browse;
import org.vestibule.flow.Faces;
import org.vestibule.flow.PageAudit;
import org.vestibule.flow.Practice;
import org.vestibule.store.index.IndexRecord;

/** One photograph: large, its facts, its kind over time; and two of them beside each other. */
final class Photograph {

  private final Site site;
  private final Practice practice;
  private final Browse browse;
  private final Faces faces;
  private final Thumbnails thumbnails;
  private final PageAudit audit;

  Photograph(Site site) {
    this.site = site;
    this.practice = site.practice();
    this.browse = new Browse(practice);
    this.faces = new Faces(practice);
    this.thumbnails = new Thumbnails(faces);
    this.audit = new PageAudit(practice);
  }

  /** The picture as it is shown. */
  Answer picture(Asked asked) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    return photo.isEmpty() ? Answers.notFound(asked) : jpeg(asked, faces.picture(photo.get()));
  }

  /** The same small. */
  Answer small(Asked asked) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    return photo.isEmpty() ? Answers.notFound(asked) : jpeg(asked, thumbnails.of(photo.get()));
  }

  private static Answer jpeg(Asked asked, Outcome<byte[]> picture) {
    return picture instanceof Done<byte[]> done
        ? Answer.bytes("image/jpeg", done.value())
        : Answers.notFound(asked);
  }

  /** The page of one photograph. */
  Answer page(Asked asked) throws IOException {
    Optional<IndexRecord> found = site.filed(asked.path("key"));
    if (found.isEmpty()) {
      return Answers.notFound(asked);
    }
    IndexRecord record = found.get();
    Outcome<Faces.Facts> facts = faces.facts(new ContentHash(record.hash()));
    if (!(facts instanceof Done<Faces.Facts> done)) {
      Refused<Faces.Facts> refused = (Refused<Faces.Facts>) facts;
      return Answer.refused(404, refused.reason(), refused.advice());
    }
    audit.looked(new ContentHash(record.hash()), asked.who());
    Pictured pictured = new Pictured(site, asked, practice.views());
    Map<String, Object> model = new HashMap<>(pictured.model(record, done.value()));
    List<IndexRecord> kind = browse.sameKind(record);
    model.put("title", model.get("view"));
    model.put("script", "photograph.js");
    model.put("facts", pictured.facts(done.value(), false));
    model.put("more", pictured.facts(done.value(), true));
    model.put("kind", kind.stream().map(other -> pictured.other(other, record)).toList());
    model.put("alone", kind.size() < 2);
    model.put("own-key", model.get("key"));
    return Answer.page("photograph", model);
  }

  /** Two photographs of one patient beside each other, the earlier one first. */
  Answer comparison(Asked asked) throws IOException {
    Optional<IndexRecord> one = site.filed(asked.path("key"));
    Optional<IndexRecord> other = site.filed(asked.path("other"));
    if (one.isEmpty() || other.isEmpty()) {
      return Answers.notFound(asked);
    }
    if (!samePatient(one.get(), other.get())) {
      return Answers.refused(asked, 409, "refusal-two-patients");
    }
    boolean inOrder = Pictured.before(one.get(), other.get());
    Pictured pictured = new Pictured(site, asked, practice.views());
    Optional<Map<String, Object>> first = half(pictured, inOrder ? one.get() : other.get());
    Optional<Map<String, Object>> second = half(pictured, inOrder ? other.get() : one.get());
    if (first.isEmpty() || second.isEmpty()) {
      return Answers.notFound(asked);
    }
    audit.looked(new ContentHash(one.get().hash()), asked.who());
    audit.looked(new ContentHash(other.get().hash()), asked.who());
    return Answer.page(
        "comparison",
        Map.of(
            "title", PageWords.of(asked.language()).say("comparison-title"),
            "script", "comparison.js",
            "overlay", Pictured.sameMargins(first.get(), second.get()),
            "first", first.get(),
            "second", second.get()));
  }

  private Optional<Map<String, Object>> half(Pictured pictured, IndexRecord record)
      throws IOException {
    Outcome<Faces.Facts> facts = faces.facts(new ContentHash(record.hash()));
    return facts instanceof Done<Faces.Facts> done
        ? Optional.of(pictured.model(record, done.value()))
        : Optional.empty();
  }

  /** Nobody's photographs are the same patient's. */
  private static boolean samePatient(IndexRecord one, IndexRecord other) {
    return !one.who().patientId().isEmpty()
        && one.who().patientId().equals(other.who().patientId())
        && one.who().issuer().equals(other.who().issuer());
  }
}
