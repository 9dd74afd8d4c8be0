package org.mainsgate.signature;

import java.security.PublicKey;
import java.security.cert.CertificateEncodingException;
import java.security.cert.X509Certificate;
import java.security.interfaces.ECPublicKey;
import java.security.interfaces.RSAPublicKey;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.bouncycastle.asn1.x500.RDN;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x500.style.IETFUtils;

/**
 * What a certificate says of a key.
 *
 * @param name whom it names, in their own words where nobody else has signed it
 * @param issuer who says so; the same as the name where nobody else does
 * @param selfMade whether it is signed by its own key
 * @param algorithm the kind of key, such as {@code EC P-256}; empty if we do not take it
 * @param from the first day in UTC on which it counts
 * @param until the last
 * @param fingerprint of the certificate
 */
public record Certified(
    String name,
    String issuer,
    boolean selfMade,
    Optional<String> algorithm,
    LocalDate from,
    LocalDate until,
    Fingerprint fingerprint) {
  private static final int LEAST_RSA = 3072;

  /** What a certificate says. */
  static Certified of(X509Certificate certificate) {
    try {
      return new Certified(
          name(certificate.getSubjectX500Principal().getEncoded()),
          name(certificate.getIssuerX500Principal().getEncoded()),
          certificate.getSubjectX500Principal().equals(certificate.getIssuerX500Principal()),
          algorithm(certificate.getPublicKey()),
          day(certificate.getNotBefore().toInstant()),
          day(certificate.getNotAfter().toInstant()),
          Fingerprint.of(certificate.getEncoded()));
    } catch (CertificateEncodingException e) {
      throw new IllegalStateException("a certificate that was read and can't be written", e);
    }
  }

  private static LocalDate day(Instant instant) {
    return LocalDate.ofInstant(instant, ZoneOffset.UTC);
  }

  /** The common name, or all of the name where there is none. */
  private static String name(byte[] encoded) {
    X500Name name = X500Name.getInstance(encoded);
    RDN[] common = name.getRDNs(BCStyle.CN);
    return common.length == 0
        ? name.toString()
        : IETFUtils.valueToString(common[0].getFirst().getValue()).replace("\\", "");
  }

  static Optional<String> algorithm(PublicKey key) {
    if (key instanceof ECPublicKey ec) {
      return switch (ec.getParams().getOrder().bitLength()) {
        case 256 -> Optional.of("EC P-256");
        case 384 -> Optional.of("EC P-384");
        default -> Optional.empty();
      };
    }
    return key instanceof RSAPublicKey rsa && rsa.getModulus().bitLength() >= LEAST_RSA
        ? Optional.of("RSA " + rsa.getModulus().bitLength())
        : Optional.empty();
  }

  /** What is wrong with it on a day; empty if nothing. */
  public Optional<String> complaintOn(LocalDate day) {
    if (day.isBefore(from)) {
      return Optional.of("the certificate of " + name + " does not count before " + from);
    }
    return day.isAfter(until)
        ? Optional.of("the certificate of " + name + " ran out on " + until)
        : Optional.empty();
  }
}
