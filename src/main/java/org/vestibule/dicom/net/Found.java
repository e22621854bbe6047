package org.vestibule.dicom.net;

import java.util.List;
import org.vestibule.dicom.DataSet;

/**
 * What a query found.
 *
 * @param answers one data set for each match, at most as many as were asked for
 * @param more true if there were more and the query was stopped
 * @param last the final answer; a failure if the query was refused
 */
public record Found(List<DataSet> answers, boolean more, Answer last) {
  public Found {
    answers = List.copyOf(answers);
  }
}
