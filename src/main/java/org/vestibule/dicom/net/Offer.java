package org.vestibule.dicom.net;

import java.util.List;

/**
 * One presentation context that we propose: a service or kind of object, and how its data sets may
 * be written (PS3.8 7.1.1.13). One of the syntaxes is chosen by the called side.
 */
public record Offer(String abstractSyntax, List<String> transferSyntaxes) {

  public Offer {
    transferSyntaxes = List.copyOf(transferSyntaxes);
    if (transferSyntaxes.isEmpty()) {
      throw new IllegalArgumentException("an offer names at least one transfer syntax");
    }
  }

  // In words, since what a record brings of itself costs the first association some 20 ms.
  @Override
  public boolean equals(Object other) {
    return other instanceof Offer offer
        && abstractSyntax.equals(offer.abstractSyntax)
        && transferSyntaxes.equals(offer.transferSyntaxes);
  }

  @Override
  public int hashCode() {
    return 31 * abstractSyntax.hashCode() + transferSyntaxes.hashCode();
  }

  /** For services whose data sets we make ourselves: explicit or implicit VR little endian. */
  public static Offer ofService(String abstractSyntax) {
    return new Offer(
        abstractSyntax, List.of(NetUids.EXPLICIT_LITTLE_ENDIAN, NetUids.IMPLICIT_LITTLE_ENDIAN));
  }

  /** For an object as it lies on disk: its own transfer syntax alone, nothing is coded again. */
  public static Offer of(Sendable object) {
    return new Offer(object.sopClass(), List.of(object.transferSyntax()));
  }
}
