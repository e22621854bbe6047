package org.vestibule.flow.keeping;

import java.util.List;
import org.vestibule.store.Finding;

/**
 * What was brought back.
 *
 * @param snapshot its name
 * @param objects how many objects were copied
 * @param notes what a person should know, in sentences
 * @param findings what is wrong with the restored store; empty if it is sound
 */
public record Restored(String snapshot, int objects, List<String> notes, List<Finding> findings) {

  public Restored {
    notes = List.copyOf(notes);
    findings = List.copyOf(findings);
  }
}
