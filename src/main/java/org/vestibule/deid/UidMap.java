package org.vestibule.deid;

/** Gives each UID its substitute: one to one, and the same one throughout a set of copies. */
@FunctionalInterface
public interface UidMap {
  String substitute(String uid);
}
