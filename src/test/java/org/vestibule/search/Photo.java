package org.vestibule.search;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.UsualFrame;

/** A photograph's description, written by hand for a test; every step gives another one. */
record Photo(IndexRecord record) {

  /** A filed photograph of a view, with the teeth usually in its frame, and nobody's yet. */
  static Photo of(String id, ShownView view) {
    return waiting(id).with(true, view.key(), view.viewName(), view.usual());
  }

  /** A photograph that waits: nothing is known but what its camera wrote. */
  static Photo waiting(String id) {
    IndexRecord.Shows nothing =
        new IndexRecord.Shows(
            "", "", "", List.of(), List.of(), List.of(), UsualFrame.NONE, "unknown", "", List.of());
    return new Photo(
        new IndexRecord(
            hash(id), id, false, null, null, IndexRecord.Who.NOBODY, nothing, "", "", ""));
  }

  /** Content hashes that have the order of the ids. */
  static String hash(String id) {
    String padded = (id + "0000").substring(0, 4);
    String rest = HexFormat.of().formatHex(id.getBytes(StandardCharsets.US_ASCII));
    String hash = String.format(Locale.ROOT, "%06x%-58s", Integer.parseInt(padded, 36), rest);
    return hash.replace(' ', '0');
  }

  private Photo with(boolean filed, String view, String name, UsualFrame usual) {
    IndexRecord.Shows s = record.shows();
    return new Photo(
        new IndexRecord(
            record.hash(),
            record.id(),
            filed,
            "2.25." + record.id().hashCode(),
            record.takenAt(),
            record.who(),
            new IndexRecord.Shows(
                view,
                name,
                s.teethWords(),
                s.teeth(),
                s.occupants(),
                s.areas(),
                usual,
                "none",
                s.stage(),
                s.accessories()),
            record.device(),
            record.treatment(),
            record.note()));
  }

  /** Taken at this local time, such as {@code 2026-03-12T10:15}, or on the day of the visit. */
  Photo taken(String when) {
    boolean dayOnly = when.length() == 10;
    IndexRecord.Who w = record.who();
    return who(new IndexRecord.Who(
            w.patientId(),
            w.issuer(),
            w.name(),
            w.referrer(),
            w.dentist(),
            w.accession(),
            w.visitKey(),
            dayOnly ? LocalDate.parse(when) : w.visitDate()))
        .at(dayOnly ? null : LocalDateTime.parse(when));
  }

  private Photo at(@Nullable LocalDateTime takenAt) {
    return new Photo(
        new IndexRecord(
            record.hash(),
            record.id(),
            record.filed(),
            record.objectUid(),
            takenAt,
            record.who(),
            record.shows(),
            record.device(),
            record.treatment(),
            record.note()));
  }

  /** Of this patient. */
  Photo patient(String number, String name) {
    IndexRecord.Who w = record.who();
    return who(
        new IndexRecord.Who(
            number,
            "MILL",
            name,
            w.referrer(),
            w.dentist(),
            w.accession(),
            w.visitKey(),
            w.visitDate()));
  }

  /** Of a visit with this referrer, dentist and accession number. */
  Photo visit(String referrer, String dentist, String accession) {
    IndexRecord.Who w = record.who();
    return who(
        new IndexRecord.Who(
            w.patientId(),
            w.issuer(),
            w.name(),
            referrer,
            dentist,
            accession,
            w.visitKey(),
            w.visitDate()));
  }

  private Photo who(IndexRecord.Who who) {
    return new Photo(
        new IndexRecord(
            record.hash(),
            record.id(),
            record.filed(),
            record.objectUid(),
            record.takenAt(),
            who,
            record.shows(),
            record.device(),
            record.treatment(),
            record.note()));
  }

  /** With these teeth named. */
  Photo teeth(Integer... teeth) {
    IndexRecord.Shows s = record.shows();
    return shows(List.of(teeth), s.occupants(), s.areas(), s.mirror(), s.stage(), s.accessories());
  }

  /** With something other than a tooth at a position, such as {@code 36 implant}. */
  Photo occupant(String at) {
    IndexRecord.Shows s = record.shows();
    List<Integer> teeth = List.of(Integer.valueOf(at.substring(0, 2)));
    return shows(teeth, List.of(at), s.areas(), s.mirror(), s.stage(), s.accessories());
  }

  /** With these areas named, by their ISO 3950 codes. */
  Photo areas(String... areas) {
    IndexRecord.Shows s = record.shows();
    return shows(s.teeth(), s.occupants(), List.of(areas), s.mirror(), s.stage(), s.accessories());
  }

  /** {@code none}, {@code as-shot}, {@code corrected} or {@code unknown}. */
  Photo mirror(String mirror) {
    IndexRecord.Shows s = record.shows();
    return shows(s.teeth(), s.occupants(), s.areas(), mirror, s.stage(), s.accessories());
  }

  Photo stage(String stage) {
    IndexRecord.Shows s = record.shows();
    return shows(s.teeth(), s.occupants(), s.areas(), s.mirror(), stage, s.accessories());
  }

  Photo accessories(String... keys) {
    IndexRecord.Shows s = record.shows();
    return shows(s.teeth(), s.occupants(), s.areas(), s.mirror(), s.stage(), List.of(keys));
  }

  private Photo shows(
      List<Integer> teeth,
      List<String> occupants,
      List<String> areas,
      String mirror,
      String stage,
      List<String> accessories) {
    IndexRecord.Shows s = record.shows();
    return new Photo(
        new IndexRecord(
            record.hash(),
            record.id(),
            record.filed(),
            record.objectUid(),
            record.takenAt(),
            record.who(),
            new IndexRecord.Shows(
                s.viewKey(),
                s.viewName(),
                s.teethWords(),
                teeth,
                occupants,
                areas,
                s.usual(),
                mirror,
                stage,
                accessories),
            record.device(),
            record.treatment(),
            record.note()));
  }

  /** With a camera, a treatment and a note. */
  Photo texts(String device, String treatment, String note) {
    return new Photo(
        new IndexRecord(
            record.hash(),
            record.id(),
            record.filed(),
            record.objectUid(),
            record.takenAt(),
            record.who(),
            record.shows(),
            device,
            treatment,
            note));
  }
}
