package org.mainsgate.signature;

import java.io.InputStream;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.Optional;

/** Certificates as files hold them, in DER or PEM. */
public final class Certificates {
  private Certificates() {}

  /** What the first certificate says, if there is one that can be read. */
  public static Optional<Certified> read(InputStream in) {
    try {
      Certificate found = CertificateFactory.getInstance("X.509").generateCertificate(in);
      return found instanceof X509Certificate certificate
          ? Optional.of(Certified.of(certificate))
          : Optional.empty();
    } catch (CertificateException none) {
      return Optional.empty();
    }
  }
}
