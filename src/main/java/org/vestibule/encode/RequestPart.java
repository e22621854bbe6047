package org.vestibule.encode;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.vestibule.assign.Order;
import org.vestibule.assign.Visit;
import org.vestibule.dental.Code;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * What was ordered: Request Attributes of General Series (PS3.3 C.7.3.1), Procedure Code and Study
 * Description of General Study (C.7.2.1). A visit without an order has none of it.
 */
final class RequestPart {

  private RequestPart() {}

  static void write(DataSet to, Visit visit) {
    Order order = visit.order();
    if (order == null) {
      return;
    }
    if (!order.description().isEmpty()) {
      to.put(Tags.StudyDescription, Fitting.cut(order.description(), Fitting.LO_CHARACTERS));
    }
    codes(to, Tags.ProcedureCodeSequence, order.codes());
    List<DataSet> requests = new ArrayList<>();
    for (Order.Step step : order.steps()) {
      requests.add(request(visit, order, step));
    }
    to.put(Tags.RequestAttributesSequence, requests);
  }

  private static DataSet request(Visit visit, Order order, Order.Step step) {
    DataSet request = new DataSet().put(Tags.StudyInstanceUID, visit.studyInstanceUid());
    text(request, Tags.AccessionNumber, visit.accessionNumber());
    text(request, Tags.RequestedProcedureID, order.requestedProcedureId());
    text(request, Tags.RequestedProcedureDescription, order.description());
    codes(request, Tags.RequestedProcedureCodeSequence, order.codes());
    text(request, Tags.ScheduledProcedureStepID, step.id());
    text(request, Tags.ScheduledProcedureStepDescription, step.description());
    codes(request, Tags.ScheduledProtocolCodeSequence, step.codes());
    return request;
  }

  private static void text(DataSet to, int tag, String text) {
    if (!text.isEmpty()) {
      to.put(tag, text);
    }
  }

  private static void codes(DataSet to, int tag, Collection<Code> codes) {
    if (!codes.isEmpty()) {
      to.put(tag, CodeItems.items(codes));
    }
  }
}
