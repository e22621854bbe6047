package org.vestibule.dicom.net;

/** Who plays which part for a service (PS3.7 D.3.3.4), as seen by the side that calls. */
record RoleSelection(String sopClass, boolean user, boolean provider) {}
