package org.vestibule.simulator;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/**
 * All that the program can know of a day. Nothing in it tells the truth on purpose.
 *
 * @param zone the site's zone
 * @param patients the patients whom the practice's records name
 * @param visits the visits that are known, those of earlier days included; their windows may be
 *     stale
 * @param photos the files that have arrived, in the order in which the folder lists them
 * @param run the run at whose time this is the state of things, from 1
 * @param ranAt when that run takes place
 */
public record SeenDay(
    LocalDate date,
    ZoneId zone,
    Regime regime,
    List<SimulatedPatient> patients,
    List<SimulatedVisit> visits,
    List<SeenPhoto> photos,
    int run,
    Instant ranAt) {

  public SeenDay {
    patients = List.copyOf(patients);
    visits = List.copyOf(visits);
    photos = List.copyOf(photos);
  }
}
