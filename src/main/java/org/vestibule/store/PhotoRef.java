package org.vestibule.store;

import org.vestibule.base.ContentHash;
import org.vestibule.encode.Role;

/**
 * Which photograph a person means, and what of it.
 *
 * @param role {@link Role#FRAME} if the whole frame of a cropped photograph was asked for, or if
 *     there is no crop; else {@link Role#CROP}
 */
public record PhotoRef(ContentHash hash, Role role) {}
