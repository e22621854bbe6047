package org.vestibule.forward;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Hands reports on, and knows which of a session's own are still to come. */
final class PendingReports {

  private final ReportSink sink;
  private final Set<String> pending = new HashSet<>();

  PendingReports(ReportSink sink) {
    this.sink = sink;
  }

  void asked(String transactionUid) {
    pending.add(transactionUid);
  }

  void notTaken(String transactionUid) {
    pending.remove(transactionUid);
  }

  boolean isEmpty() {
    return pending.isEmpty();
  }

  boolean take(org.vestibule.dicom.net.CommitmentReport report) {
    pending.remove(report.transactionUid());
    return sink.take(read(report));
  }

  /** The report as the courier knows it. */
  static CommitmentReport read(org.vestibule.dicom.net.CommitmentReport report) {
    Map<String, Integer> failed = new LinkedHashMap<>();
    report.failed().forEach(f -> failed.put(f.instance().sopInstance(), f.why().status()));
    return new CommitmentReport(
        report.transactionUid(), report.kept().stream().map(i -> i.sopInstance()).toList(), failed);
  }
}
