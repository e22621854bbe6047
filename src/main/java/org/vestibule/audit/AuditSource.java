package org.vestibule.audit;

/**
 * Who reports (AuditSourceIdentification, PS3.15 A.5.1).
 *
 * @param id this installation, unique within the site
 * @param site the site; empty if not said
 */
record AuditSource(String id, String site) {}
