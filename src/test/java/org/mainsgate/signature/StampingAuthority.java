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

  /** An authority with a new key. */
  public StampingAuthority() {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
      generator.initialize(new ECGenParameterSpec("secp256r1"));
      pair = generator.generateKeyPair();
      certificate = certificate(pair);
    } catch (GeneralSecurityException | OperatorCreationException | CertIOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static X509Certificate certificate(KeyPair pair)
      throws GeneralSecurityException, OperatorCreationException, CertIOException {
    X500Name name = new X500Name("CN=a clock for tests");
    JcaX509v3CertificateBuilder builder =
        new JcaX509v3CertificateBuilder(
            name,
            BigInteger.TWO,
            Date.from(TIME.minusSeconds(86_400)),
            Date.from(TIME.plusSeconds(315_360_000)),
            name,
            pair.getPublic());
    builder.addExtension(
        Extension.extendedKeyUsage, true, new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping));
    return new JcaX509CertificateConverter()
        .getCertificate(
            builder.build(new JcaContentSignerBuilder("SHA256withECDSA").build(pair.getPrivate())));
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
      tokens.addCertificates(new JcaCertStore(List.of(certificate)));
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
