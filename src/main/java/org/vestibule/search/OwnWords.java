package org.vestibule.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.FoldedWords;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexTerm;
import org.vestibule.store.index.PhotoIndex;

/** Words of the practice's own data: names, numbers, treatments; with or without their label. */
final class OwnWords {

  private static final List<IndexField> ANY =
      List.of(
          IndexField.NAME,
          IndexField.REFERRER,
          IndexField.DENTIST,
          IndexField.TEXT,
          IndexField.DEVICE);

  private static final List<IndexField> PHOTOGRAPH = List.of(IndexField.ID, IndexField.HASH);

  private static final Set<IndexField> WHOLE =
      Set.of(IndexField.PATIENT, IndexField.ACCESSION, IndexField.ID, IndexField.HASH);

  private static final String PATIENT = "patient";

  private static final List<Label> LABELS =
      List.of(
          new Label("patient number", IndexField.PATIENT),
          new Label("patient no", "patient number", IndexField.PATIENT),
          new Label("patient id", "patient number", IndexField.PATIENT),
          new Label(PATIENT, IndexField.NAME),
          new Label("referred by", IndexField.REFERRER),
          new Label("referrer", "referred by", IndexField.REFERRER),
          new Label("dentist", IndexField.DENTIST),
          new Label("dr", IndexField.REFERRER, IndexField.DENTIST),
          new Label("doctor", "dr", IndexField.REFERRER, IndexField.DENTIST),
          new Label("accession number", "accession", IndexField.ACCESSION),
          new Label("accession", IndexField.ACCESSION),
          new Label("treatment or note", IndexField.TEXT),
          new Label("treatment", "treatment or note", IndexField.TEXT),
          new Label("note", "treatment or note", IndexField.TEXT),
          new Label("camera", IndexField.DEVICE));

  /** What a word is, said before it; the echo is our word for it. */
  private record Label(List<String> says, String echo, List<IndexField> fields) {
    Label(String says, IndexField... fields) {
      this(says, says, fields);
    }

    Label(String says, String echo, IndexField... fields) {
      this(List.of(says.split(" ", -1)), echo, List.of(fields));
    }
  }

  /**
   * What was read.
   *
   * @param tokens how many words it took
   */
  record Taken(List<Part> parts, int tokens) {}

  private final PhotoIndex index;

  OwnWords(PhotoIndex index) {
    this.index = index;
  }

  /**
   * A label and the word after it; nothing if no label stands here.
   *
   * @param lower the same words in lower case
   */
  Optional<Outcome<Taken>> labelled(List<String> tokens, List<String> lower, int at)
      throws IOException {
    for (Label label : LABELS) {
      int value = at + label.says.size();
      if (value <= tokens.size() && lower.subList(at, value).equals(label.says)) {
        return labelled(label, tokens, at, value);
      }
    }
    return Optional.empty();
  }

  private Optional<Outcome<Taken>> labelled(Label label, List<String> tokens, int at, int value)
      throws IOException {
    int count = value < tokens.size() ? Tokens.quoted(tokens, value) : 0;
    String said = Tokens.bare(String.join(" ", tokens.subList(value, value + count)));
    List<Part> parts = label.echo.equals(PATIENT) ? number(said) : List.of();
    parts = parts.isEmpty() ? words(said, label.fields, label.echo + " ", "") : parts;
    if (!parts.isEmpty()) {
      return Optional.of(Outcome.done(new Taken(parts, value + count - at)));
    }
    if (!anyWord(tokens.get(at)).isEmpty()) {
      return Optional.empty();
    }
    String labelWords = String.join(" ", label.says);
    return Optional.of(
        said.isEmpty() || Tokens.isSeparator(said)
            ? Outcome.refused(
                "after \"" + labelWords + "\" a name or number is expected",
                "say it, or leave \"" + labelWords + "\" out")
            : Outcome.refused(
                "no photograph is known here by " + labelWords + " \"" + said + "\"",
                "write it as it stands in the list of visits"));
  }

  private List<Part> number(String said) throws IOException {
    return words(said, List.of(IndexField.PATIENT), "patient number ", "");
  }

  /** A number of a patient or of a visit, or what a photograph is called by. */
  List<Part> anyNumber(String said) throws IOException {
    List<Part> number = number(said);
    number =
        number.isEmpty() ? words(said, List.of(IndexField.ACCESSION), "accession ", "") : number;
    return number.isEmpty() ? words(said, PHOTOGRAPH, "", "") : number;
  }

  /** A word of a patient's name. */
  List<Part> name(String said) throws IOException {
    return words(said, List.of(IndexField.NAME), PATIENT + " ", "");
  }

  /** A word of names or texts in the record, whichever field holds it. */
  List<Part> anyWord(String said) throws IOException {
    return words(said, ANY, "", " in a name, treatment or note");
  }

  private List<Part> words(String said, List<IndexField> fields, String before, String after)
      throws IOException {
    boolean whole = WHOLE.contains(fields.get(0));
    String plain = said.toLowerCase(Locale.ROOT);
    List<String> words = whole ? List.of(plain) : FoldedWords.of(said);
    List<Part> parts = new ArrayList<>();
    for (String word : words) {
      List<IndexTerm> terms = new ArrayList<>();
      for (IndexField field : fields) {
        for (String spelling : spellings(word, whole)) {
          IndexTerm term = new IndexTerm(field, spelling);
          if (index.has(term)) {
            terms.add(term);
          }
        }
      }
      if (terms.isEmpty()) {
        return List.of();
      }
      parts.add(
          new Part(
              whole ? fields.get(0) : IndexField.TEXT,
              new AnyOf(terms),
              before + "\"" + word + "\"" + after));
    }
    return List.copyOf(parts);
  }

  private static List<String> spellings(String word, boolean whole) {
    return whole ? List.of(word) : FoldedWords.spellings(word);
  }
}
