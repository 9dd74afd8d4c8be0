package org.mainsgate.signature;

import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;

/** A time-stamp authority of its own, by the library's account of RFC 3161. */
public final class StampingAuthority implements TimeStampAuthority {
  /** The only time that it knows. */
  public static final Instant TIME = Instant.parse("2026-11-25T18:00:30Z");

  private final KeyPair pair;
  private final X509Certificate certificate;
  private final List<X509Certificate> sent;

  private StampingAuthority(KeyPair pair, X509Certificate certificate, List<X509Certificate> sent) {
    this.pair = pair;
    this.certificate = certificate;
    this.sent = sent;
  }

  /** An authority with a new key. */
  public StampingAuthority() {
    this(ec());
  }

  private StampingAuthority(KeyPair pair) {
    this(pair, certificate("a clock for tests", pair, "a clock for tests", pair));
  }

  private StampingAuthority(KeyPair pair, X509Certificate certificate) {
    this(pair, certificate, List.of(certificate));
  }

  /** One that sends the certificate of the office above it too, which nothing names. */
  public static StampingAuthority chained() {
    KeyPair office = ec();
    KeyPair own = ec();
    X509Certificate above = certificate("an office", office, "an office", office);
    X509Certificate certificate = certificate("a clock for tests", own, "an office", office);
    return new StampingAuthority(own, certificate, List.of(certificate, above));
  }

  private static KeyPair ec() {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
      generator.initialize(new ECGenParameterSpec("secp256r1"));
      return generator.generateKeyPair();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  private static X509Certificate certificate(
      String name, KeyPair pair, String issuer, KeyPair office) {
    try {
      JcaX509v3CertificateBuilder builder =
          new JcaX509v3CertificateBuilder(
              new X500Name("CN=" + issuer),
              BigInteger.TWO,
              Date.from(TIME.minusSeconds(86_400)),
              Date.from(TIME.plusSeconds(315_360_000)),
              new X500Name("CN=" + name),
              pair.getPublic());
      builder.addExtension(
          Extension.extendedKeyUsage, true, new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping));
      return new JcaX509CertificateConverter()
          .getCertificate(
              builder.build(
                  new JcaContentSignerBuilder("SHA256withECDSA").build(office.getPrivate())));
    } catch (GeneralSecurityException | OperatorCreationException | CertIOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public byte[] ask(byte[] request) throws IOException {
    try {
      TimeStampTokenGenerator tokens =
          new TimeStampTokenGenerator(
              new JcaSimpleSignerInfoGeneratorBuilder()
                  .build("SHA256withECDSA", pair.getPrivate(), certificate),
              new JcaDigestCalculatorProviderBuilder()
                  .build()
                  .get(new AlgorithmIdentifier(NISTObjectIdentifiers.id_sha256)),
              new ASN1ObjectIdentifier("1.3.6.1.4.1.13762.3"));
      tokens.addCertificates(new JcaCertStore(sent));
      return new TimeStampResponseGenerator(tokens, TSPAlgorithms.ALLOWED)
          .generate(new TimeStampRequest(request), BigInteger.TEN, Date.from(TIME))
          .getEncoded();
    } catch (TSPException | OperatorCreationException | GeneralSecurityException e) {
      throw new IOException(e);
    }
  }

  /** Its certificate, in DER. */
  public byte[] certificate() {
    try {
      return certificate.getEncoded();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }
}
