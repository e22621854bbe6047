package org.vestibule.assign;

import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;

/**
 * Everything that can say something about photographs.
 *
 * @param visits the practice's visits
 * @param manifest the list beside the photographs, if there is one
 * @param patterns what folder and file names mean
 * @param oneExport true if folders and visit list come out of one program, so that both together
 *     are one fact
 * @param declarations how named persons said a view is always taken here
 * @param views the views known here
 * @param teeth reads teeth as people here write them
 * @param lowerArch how the lower arch is shown here
 * @param zone where the practice's clocks are
 * @param by who is named as having decided where a row names nobody
 */
public record AssignSources(
    VisitList visits,
    @Nullable Manifest manifest,
    List<NamePattern> patterns,
    boolean oneExport,
    List<CaptureDeclaration> declarations,
    ViewCatalogue views,
    TeethReader teeth,
    LowerArchShown lowerArch,
    ZoneId zone,
    String by) {

  public AssignSources {
    patterns = List.copyOf(patterns);
    declarations = List.copyOf(declarations);
  }
}
