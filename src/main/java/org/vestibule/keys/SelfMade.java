package org.vestibule.keys;

import java.io.IOException;
import java.io.StringWriter;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509ExtensionUtils;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.openssl.jcajce.JcaPEMWriter;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.util.io.pem.PemObject;
import org.vestibule.base.Outcome;

/**
 * The practice's own certificate: made here, for its own names, and trusted by whoever once said so
 * at their device. Devices trust issuers, so there is one (RFC 5280); its key is forgotten as soon
 * as it has signed the one certificate. Whoever trusts it trusts nothing else.
 */
public final class SelfMade {

  /** Devices take no longer ones from people (825 days, from memory); a year and a month. */
  private static final Duration LASTS = Duration.ofDays(397);

  private static final Duration RENEWED_BEFORE = Duration.ofDays(30);
  private static final String CERTIFICATE = "own-certificate.pem";
  private static final String ISSUER = "own-issuer.pem";
  private static final String KEY = "own-key.pem";

  private SelfMade() {}

  /**
   * The certificate and key in this folder; made anew if there are none, if they end within a
   * month, or if they are for other names.
   *
   * @param names host names and addresses
   */
  public static Outcome<TlsFiles> in(Path folder, List<String> names, Clock clock)
      throws IOException {
    Path certificate = folder.resolve(CERTIFICATE);
    TlsFiles files =
        new TlsFiles(
            Optional.of(certificate),
            Optional.of(folder.resolve(KEY)),
            Optional.empty(),
            Optional.empty());
    if (!Files.exists(certificate) || !isGood(certificate, names, clock.instant())) {
      make(folder, names, clock.instant());
    }
    return Outcome.done(files);
  }

  /** The file with the issuer's certificate in this folder, for devices that are to trust it. */
  public static Path issuer(Path folder) {
    return folder.resolve(ISSUER);
  }

  private static boolean isGood(Path file, List<String> names, Instant now) throws IOException {
    try {
      List<X509Certificate> found =
          new PemFile(KeyBytes.read(file), Optional.empty()).certificates();
      return found.size() == 2
          && now.plus(RENEWED_BEFORE).isBefore(found.get(0).getNotAfter().toInstant())
          && certified(found.get(0)).equals(new TreeSet<>(names));
    } catch (KeyRefusal | GeneralSecurityException unreadable) {
      return false;
    }
  }

  private static Set<String> certified(X509Certificate certificate)
      throws GeneralSecurityException {
    Set<String> names = new TreeSet<>();
    certificate
        .getSubjectAlternativeNames()
        .forEach(name -> names.add(String.valueOf(name.get(1))));
    return names;
  }

  private static void make(Path folder, List<String> names, Instant now) throws IOException {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
      generator.initialize(new ECGenParameterSpec("secp256r1"), new SecureRandom());
      KeyPair issuing = generator.generateKeyPair();
      KeyPair own = generator.generateKeyPair();
      String last = names.get(names.size() - 1);
      X500Name issuer = new X500Name("CN=Vestibule at " + last + " since " + now);
      X509Certificate root =
          signed(builder(issuer, issuer, issuing, now), issuing, new BasicConstraints(0));
      JcaX509v3CertificateBuilder builder = builder(issuer, new X500Name("CN=" + last), own, now);
      GeneralName[] all = names.stream().map(SelfMade::generalName).toArray(GeneralName[]::new);
      builder.addExtension(Extension.subjectAlternativeName, false, new GeneralNames(all));
      builder.addExtension(
          Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
      X509Certificate leaf = signed(builder, issuing, new BasicConstraints(false));
      ownersFolder(folder);
      write(folder.resolve(KEY), pem(new PemObject("PRIVATE KEY", own.getPrivate().getEncoded())));
      write(folder.resolve(ISSUER), pem(root));
      write(folder.resolve(CERTIFICATE), pem(leaf) + pem(root));
    } catch (GeneralSecurityException | OperatorCreationException e) {
      throw new IllegalStateException("the Java runtime makes no certificates", e);
    }
  }

  private static JcaX509v3CertificateBuilder builder(
      X500Name issuer, X500Name subject, KeyPair pair, Instant now)
      throws GeneralSecurityException, IOException {
    JcaX509v3CertificateBuilder builder =
        new JcaX509v3CertificateBuilder(
            issuer,
            new BigInteger(127, new SecureRandom()).setBit(126),
            Date.from(now.minus(Duration.ofHours(1))),
            Date.from(now.plus(LASTS)),
            subject,
            pair.getPublic());
    builder.addExtension(
        Extension.subjectKeyIdentifier,
        false,
        new JcaX509ExtensionUtils().createSubjectKeyIdentifier(pair.getPublic()));
    return builder;
  }

  private static X509Certificate signed(
      JcaX509v3CertificateBuilder builder, KeyPair issuing, BasicConstraints kind)
      throws GeneralSecurityException, OperatorCreationException, IOException {
    int usage = kind.isCA() ? KeyUsage.keyCertSign | KeyUsage.cRLSign : KeyUsage.digitalSignature;
    // By these two a strict reader finds the issuer (RFC 5280, 4.2.1.1 and 4.2.1.2).
    builder.addExtension(
        Extension.authorityKeyIdentifier,
        false,
        new JcaX509ExtensionUtils().createAuthorityKeyIdentifier(issuing.getPublic()));
    builder.addExtension(Extension.basicConstraints, true, kind);
    builder.addExtension(Extension.keyUsage, true, new KeyUsage(usage));
    return new JcaX509CertificateConverter()
        .getCertificate(
            builder.build(
                new JcaContentSignerBuilder("SHA256withECDSA").build(issuing.getPrivate())));
  }

  private static GeneralName generalName(String name) {
    boolean address = name.contains(":") || name.matches("\\d{1,3}(\\.\\d{1,3}){3}");
    return new GeneralName(address ? GeneralName.iPAddress : GeneralName.dNSName, name);
  }

  private static String pem(Object object) throws IOException {
    StringWriter text = new StringWriter();
    try (JcaPEMWriter writer = new JcaPEMWriter(text)) {
      writer.writeObject(object);
    }
    return text.toString();
  }

  private static void ownersFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.createDirectories(
          folder,
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    } else {
      // The home folder above it is its owner's alone.
      Files.createDirectories(folder);
    }
  }

  private static void write(Path file, String text) throws IOException {
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    Files.writeString(beside, text, StandardCharsets.US_ASCII);
    Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
  }
}
