package org.vestibule.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.vestibule.ExternalTool;
import org.vestibule.keys.TlsFiles;

/** A certificate for localhost that signs itself, made by OpenSSL's program. */
record TestCertificate(Path certificate, Path key) {

  static TestCertificate make(Path folder, String name) throws Exception {
    Path certificate = folder.resolve(name + "-cert.pem");
    Path key = folder.resolve(name + "-key.pem");
    ExternalTool.Result made =
        ExternalTool.require("openssl", "openssl")
            .run(
                "req",
                "-x509",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-days",
                "30",
                "-subj",
                "/CN=localhost",
                "-addext",
                "subjectAltName=DNS:localhost",
                "-keyout",
                key.toString(),
                "-out",
                certificate.toString());
    assertThat(made.exitCode()).as(made.errors()).isZero();
    return new TestCertificate(certificate, key);
  }

  TlsFiles identity() {
    return new TlsFiles(
        Optional.of(certificate), Optional.of(key), Optional.empty(), Optional.empty());
  }

  TlsFiles trusted() {
    return new TlsFiles(
        Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(certificate));
  }
}
