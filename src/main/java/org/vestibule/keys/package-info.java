/**
 * Private keys, certificates and trust for TLS, read from PEM or PKCS#12.
 *
 * <p>Bouncy Castle is used here and nowhere else: it reads the forms of private keys that the JDK
 * doesn't. The connections themselves are the JDK's.
 */
@NullMarked
package org.vestibule.keys;

import org.jspecify.annotations.NullMarked;
