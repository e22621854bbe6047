package org.vestibule.keys;

import java.security.PrivateKey;
import java.security.cert.X509Certificate;
import java.util.List;

/** Who we are to the other side: a private key and its certificates, our own first. */
record Identity(PrivateKey key, List<X509Certificate> chain) {

  Identity {
    chain = List.copyOf(chain);
  }

  X509Certificate own() {
    return chain.get(0);
  }
}
