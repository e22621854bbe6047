/**
 * The run nobody watches: checks up front, ingest, a share of the objects read again, and what is
 * told of it to people (a page, lines), to machines (log lines, metrics, a heartbeat) and to the
 * scheduler (the ending).
 */
@NullMarked
package org.vestibule.flow.night;

import org.jspecify.annotations.NullMarked;
