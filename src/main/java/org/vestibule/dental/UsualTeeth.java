package org.vestibule.dental;

import java.util.List;

/** The teeth usually in frame: a hint for searching, never a record that they are present. */
public record UsualTeeth(List<Tooth> permanent, List<Tooth> mixed, List<Tooth> deciduous) {

  public UsualTeeth {
    permanent = List.copyOf(permanent);
    mixed = List.copyOf(mixed);
    deciduous = List.copyOf(deciduous);
  }

  /** True if the tooth is usually in frame in any of the three dentitions. */
  public boolean contains(Tooth tooth) {
    return permanent.contains(tooth) || mixed.contains(tooth) || deciduous.contains(tooth);
  }
}
