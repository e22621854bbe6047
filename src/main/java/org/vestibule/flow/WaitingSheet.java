package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.Outcome;
import org.vestibule.flow.look.Card;
import org.vestibule.flow.look.Fact;
import org.vestibule.flow.look.Say;
import org.vestibule.flow.look.Sheet;
import org.vestibule.flow.look.SheetFile;
import org.vestibule.flow.look.SheetSection;

/** What waits, as a page with the pictures. */
public final class WaitingSheet {

  private WaitingSheet() {}

  /** Writes the page, in place of an older one but of nothing else. */
  public static Outcome<Path> write(Practice practice, List<WaitingPhoto> waiting, Path file)
      throws IOException {
    SourceFiles sources = new SourceFiles(practice);
    List<Card> cards = new ArrayList<>();
    for (WaitingPhoto photo : waiting) {
      cards.add(card(photo, sources));
    }
    Sheet sheet =
        new Sheet(
            "What waits for you",
            waiting.isEmpty()
                ? "Nothing waits."
                : "These photographs are safe, but something about them has to be said by a person"
                    + " before they can be filed.",
            Sheet.CAUTION,
            List.of(),
            "",
            List.of(),
            cards.isEmpty()
                ? List.of()
                : List.of(
                    new SheetSection(
                        "Waiting",
                        "Pictures are turned as the camera asked, nothing else. A mirror image is"
                            + " still one here: its right and left are exchanged. Say edges as you see"
                            + " them.",
                        cards)),
            "To file one: vestibule file ID, with what is missing, and --by and your name.");
    return SheetFile.write(sheet, file);
  }

  private static Card card(WaitingPhoto photo, SourceFiles sources) {
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact("File", photo.name()));
    for (PhotoFact fact : PhotoFact.values()) {
      String known = photo.proposal().get(fact.word());
      if (known != null) {
        facts.add(new Fact(Say.capital(fact.word()), known));
      }
    }
    List<String> notes = new ArrayList<>();
    for (WaitingPhoto.Reason reason : photo.reasons()) {
      notes.add("Why: " + reason.sentence() + ".");
      notes.add("What to do: " + reason.advice() + ".");
    }
    for (Advice advice : photo.advice()) {
      notes.add(
          "Could be better: "
              + advice.kind()
              + " ("
              + advice.measure()
              + "). "
              + Say.sentence(advice.whatToDo()));
    }
    return new Card(photo.id(), sources.picture(photo.hash()), List.of(), facts, notes);
  }
}
