package org.mainsgate.seal;

import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.List;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.X500NameBuilder;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.DigestCalculator;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;
import org.mainsgate.signature.TimeStampAuthority;

/** A time-stamp authority that asks nobody (RFC 3161), with a clock that stands still. */
final class StampingOffice implements TimeStampAuthority {
  /** Any policy will do; 2.999 is the arc for examples (ITU-T X.660, from memory). */
  private static final ASN1ObjectIdentifier POLICY = new ASN1ObjectIdentifier("2.999.1");

  private final KeyPair keys;
  private final X509Certificate certificate;
  private final Instant now;
  private BigInteger serial = BigInteger.ONE;

  StampingOffice(String name, LocalDate from, Instant now) {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
      generator.initialize(new ECGenParameterSpec("secp256r1"));
      this.keys = generator.generateKeyPair();
      this.certificate = certificate(name, keys, from);
      this.now = now;
    } catch (GeneralSecurityException | OperatorCreationException | CertIOException e) {
      throw new AssertionError(e);
    }
  }

  private static X509Certificate certificate(String name, KeyPair keys, LocalDate from)
      throws GeneralSecurityException, OperatorCreationException, CertIOException {
    X500Name subject = new X500NameBuilder(BCStyle.INSTANCE).addRDN(BCStyle.CN, name).build();
    X509v3CertificateBuilder builder =
        new JcaX509v3CertificateBuilder(
            subject,
            BigInteger.TEN,
            Date.from(from.atStartOfDay().toInstant(ZoneOffset.UTC)),
            Date.from(from.plusYears(10).atStartOfDay().toInstant(ZoneOffset.UTC)),
            subject,
            keys.getPublic());
    builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
    builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature));
    // RFC 3161 2.3: this purpose alone, and critical.
    builder.addExtension(
        Extension.extendedKeyUsage, true, new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping));
    return new JcaX509CertificateConverter()
        .getCertificate(
            builder.build(new JcaContentSignerBuilder("SHA256withECDSA").build(keys.getPrivate())));
  }

  /** Its certificate in DER. */
  byte[] certificate() throws GeneralSecurityException {
    return certificate.getEncoded();
  }

  @Override
  public byte[] ask(byte[] request) throws IOException {
    try {
      DigestCalculator sha256 =
          new JcaDigestCalculatorProviderBuilder()
              .build()
              .get(new AlgorithmIdentifier(NISTObjectIdentifiers.id_sha256));
      TimeStampTokenGenerator tokens =
          new TimeStampTokenGenerator(
              new JcaSimpleSignerInfoGeneratorBuilder()
                  .build("SHA256withECDSA", keys.getPrivate(), certificate),
              sha256,
              POLICY);
      tokens.addCertificates(new JcaCertStore(List.of(certificate)));
      serial = serial.add(BigInteger.ONE);
      return new TimeStampResponseGenerator(tokens, TSPAlgorithms.ALLOWED)
          .generate(new TimeStampRequest(request), serial, Date.from(now))
          .getEncoded();
    } catch (TSPException | OperatorCreationException | GeneralSecurityException e) {
      throw new AssertionError(e);
    }
  }
}
