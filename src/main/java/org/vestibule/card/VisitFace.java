package org.vestibule.card;

/**
 * What stands on a visit card: the token in its code, the rest for people, who hand it to the right
 * chair. How much of a name may stand there is for the practice to say; none is an empty text.
 *
 * @param token the visit's token
 * @param time when the visit is, such as {@code 09:30}
 * @param visit the visit's key in the practice's list
 * @param name the patient's name, initials, or nothing
 */
public record VisitFace(String token, String time, String visit, String name) {}
