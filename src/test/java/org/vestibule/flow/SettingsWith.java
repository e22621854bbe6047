package org.vestibule.flow;

import org.vestibule.audit.AuditRules;
import org.vestibule.forward.worklist.WorklistRules;

/** Settings of which one part differs. */
public final class SettingsWith {

  private SettingsWith() {}

  public static Settings audit(Settings old, AuditRules audit) {
    return with(old, audit, old.worklist());
  }

  public static Settings worklist(Settings old, WorklistRules worklist) {
    return with(old, old.audit(), worklist);
  }

  private static Settings with(Settings old, AuditRules audit, WorklistRules worklist) {
    return new Settings(
        old.practiceId(),
        old.practiceName(),
        old.zone(),
        old.issuer(),
        old.notation(),
        old.lowerArch(),
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
        worklist);
  }
}
