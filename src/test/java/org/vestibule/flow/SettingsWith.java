package org.vestibule.flow;

import org.vestibule.audit.AuditRules;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.forward.worklist.WorklistRules;

/** Settings of which one part differs. */
public final class SettingsWith {

  private SettingsWith() {}

  public static Settings audit(Settings old, AuditRules audit) {
    return with(old, audit, old.worklist(), old.door());
  }

  public static Settings worklist(Settings old, WorklistRules worklist) {
    return with(old, old.audit(), worklist, old.door());
  }

  public static Settings door(Settings old, DoorRules door) {
    return with(old, old.audit(), old.worklist(), door);
  }

  /** The settings of a site of this id and name. */
  public static Settings site(Settings old, String id, String name) {
    return with(old, id, name, old.lowerArch(), old.audit(), old.worklist(), old.door());
  }

  /** The settings with another name and lower arch. */
  static Settings shown(Settings old, String name, LowerArchShown lowerArch) {
    return with(old, old.practiceId(), name, lowerArch, old.audit(), old.worklist(), old.door());
  }

  private static Settings with(
      Settings old, AuditRules audit, WorklistRules worklist, DoorRules door) {
    return with(old, old.practiceId(), old.practiceName(), old.lowerArch(), audit, worklist, door);
  }

  private static Settings with(
      Settings old,
      String id,
      String name,
      LowerArchShown lowerArch,
      AuditRules audit,
      WorklistRules worklist,
      DoorRules door) {
    return new Settings(
        id,
        name,
        old.zone(),
        old.issuer(),
        old.notation(),
        lowerArch,
        old.language(),
        old.inbox(),
        old.objects(),
        old.visits(),
        old.views(),
        old.settle(),
        old.namePatterns(),
        old.oneExport(),
        old.captures(),
        old.sorting(),
        old.ageOfMajority(),
        old.quality(),
        old.night(),
        old.web(),
        old.forward(),
        audit,
        worklist,
        door);
  }
}
