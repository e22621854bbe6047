package org.vestibule.web;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Who is asking. */
public enum Role {
  /** Nobody that is known. */
  NOBODY,
  /** Sees the practice's photographs and decides nothing. */
  READER,
  /** Sees and decides. */
  STAFF,
  /** Sees, decides, and lets others in. */
  ADMINISTRATOR,
  /** A phone that was let in for one visit, which is the session's scope. */
  PHONE,
  /** Somebody outside to whom some photographs were shared; the share is the session's scope. */
  REFERRER;

  /** Everybody, known or not. */
  static final Set<Role> ANYONE = EnumSet.allOf(Role.class);

  /** Whoever may see the practice's photographs. */
  static final Set<Role> PRACTICE = EnumSet.of(READER, STAFF, ADMINISTRATOR);

  /** Whoever may decide about them. */
  static final Set<Role> DECIDES = EnumSet.of(STAFF, ADMINISTRATOR);

  /** True if a name and a password can stand for it. */
  public boolean isAccount() {
    return PRACTICE.contains(this);
  }

  /** The word for it in the ledger and on the command line. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The role with this word. */
  public static Optional<Role> of(String word) {
    return Arrays.stream(values()).filter(role -> role.word().equals(word)).findFirst();
  }
}
