package org.vestibule.audit;

/**
 * The other side of a line, or a person at a machine.
 *
 * @param userId who, as the site knows them: a login name, an AE title, a host
 * @param alternativeId another name of the same; empty if none
 * @param name a person's name; empty if none
 * @param address host name, IP address or URI; empty if none
 */
public record AuditPeer(String userId, String alternativeId, String name, String address) {

  /** A DICOM application, called by its AE title (A.5.2.2: {@code AETITLES=}). */
  public static AuditPeer application(String title, String host) {
    return new AuditPeer(title, "AETITLES=" + title, "", host);
  }

  /** A person by name, who logged in to this machine under another one. */
  public static AuditPeer person(String name, String login, String address) {
    return new AuditPeer(name, login, name, address);
  }
}
