package org.mainsgate.signature;

import java.io.IOException;
import java.math.BigInteger;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.security.cert.CertificateEncodingException;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bouncycastle.asn1.ASN1EncodableVector;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.IssuerSerial;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateHolder;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.CMSSignedDataGenerator;
import org.bouncycastle.cms.DefaultSignedAttributeTableGenerator;
import org.bouncycastle.cms.SignerInfoGenerator;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.SignerInformationStore;
import org.bouncycastle.cms.jcajce.JcaSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.bouncycastle.tsp.TimeStampResponse;

/**
 * Signs bytes: a detached CMS with the signed attributes of CAdES baseline level B (ETSI EN 319
 * 122-1), and with a time-stamp over the signature that of level T. The claimed time is no part of
 * it: in a PDF it stands in the signature's dictionary (ETSI EN 319 142-1, 6.3).
 */
public final class Signing {
  private static final ASN1ObjectIdentifier STAMP =
      PKCSObjectIdentifiers.id_aa_signatureTimeStampToken;

  private final Identity identity;
  private final Optional<TimeStampAuthority> authority;
  private final SecureRandom chance;

  /**
   * Signing with one key.
   *
   * @param authority who stamps the time, if anybody does
   * @param chance what a request for a time-stamp is told apart by
   */
  public Signing(Identity identity, Optional<TimeStampAuthority> authority, SecureRandom chance) {
    this.identity = identity;
    this.authority = authority;
    this.chance = chance;
  }

  /** Whose signature it will be. */
  public Certified certified() {
    return identity.certified();
  }

  /** Whether somebody stamps the time. */
  public boolean isStamped() {
    return authority.isPresent();
  }

  /**
   * A signature over these bytes, in DER.
   *
   * @throws IOException if the authority does not answer, or not as it should
   */
  public byte[] sign(byte[] content) throws IOException {
    try {
      CMSSignedDataGenerator generator = new CMSSignedDataGenerator();
      generator.addSignerInfoGenerator(signer());
      generator.addCertificates(new JcaCertStore(identity.chain()));
      CMSSignedData signed = generator.generate(new CMSProcessableByteArray(content), false);
      CMSSignedData stamped = authority.isPresent() ? stamped(signed, authority.get()) : signed;
      return OneForm.formed(stamped.toASN1Structure(), Set.of(STAMP))
          .orElseThrow(() -> new IllegalStateException("a signature without its certificate"))
          .getEncoded(ASN1Encoding.DER);
    } catch (CMSException | OperatorCreationException | CertificateEncodingException e) {
      throw new IllegalStateException("a key that was tried before can't sign", e);
    }
  }

  private SignerInfoGenerator signer()
      throws OperatorCreationException, CertificateEncodingException {
    SigningCertificateV2 own = new SigningCertificateV2(certificates());
    Attribute attribute =
        new Attribute(PKCSObjectIdentifiers.id_aa_signingCertificateV2, new DERSet(own));
    DefaultSignedAttributeTableGenerator attributes =
        new DefaultSignedAttributeTableGenerator(new AttributeTable(set(attribute)));
    return new JcaSignerInfoGeneratorBuilder(new JcaDigestCalculatorProviderBuilder().build())
        .setSignedAttributeGenerator(
            parameters ->
                attributes
                    .getAttributes(parameters)
                    .remove(CMSAttributes.signingTime)
                    .remove(CMSAttributes.cmsAlgorithmProtect))
        .build(
            new JcaContentSignerBuilder(identity.signing()).build(identity.key()),
            identity.chain().get(0));
  }

  private static ASN1EncodableVector set(Attribute attribute) {
    ASN1EncodableVector vector = new ASN1EncodableVector();
    vector.add(attribute);
    return vector;
  }

  /** Each certificate that goes with the signature, so that none is another unnoticed. */
  private ESSCertIDv2[] certificates() throws CertificateEncodingException {
    List<ESSCertIDv2> all = new ArrayList<>();
    for (X509Certificate one : identity.chain()) {
      all.add(certificate(one));
    }
    return all.toArray(new ESSCertIDv2[0]);
  }

  private static ESSCertIDv2 certificate(X509Certificate certificate)
      throws CertificateEncodingException {
    JcaX509CertificateHolder holder = new JcaX509CertificateHolder(certificate);
    byte[] hash = sha256(certificate.getEncoded());
    IssuerSerial issuer =
        new IssuerSerial(
            new GeneralNames(new GeneralName(holder.getIssuer())), holder.getSerialNumber());
    return new ESSCertIDv2((AlgorithmIdentifier) null, hash, issuer);
  }

  static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private CMSSignedData stamped(CMSSignedData signed, TimeStampAuthority asked) throws IOException {
    SignerInformation signer = signed.getSignerInfos().getSigners().iterator().next();
    byte[] token = token(asked, signer.getSignature());
    Attribute attribute = new Attribute(STAMP, new DERSet(ASN1Primitive.fromByteArray(token)));
    SignerInformation more =
        SignerInformation.replaceUnsignedAttributes(signer, new AttributeTable(set(attribute)));
    return CMSSignedData.replaceSigners(signed, new SignerInformationStore(List.of(more)));
  }

  private byte[] token(TimeStampAuthority asked, byte[] signature) throws IOException {
    TimeStampRequestGenerator generator = new TimeStampRequestGenerator();
    generator.setCertReq(true);
    TimeStampRequest request =
        generator.generate(
            NISTObjectIdentifiers.id_sha256, sha256(signature), new BigInteger(64, chance));
    try {
      TimeStampResponse response = new TimeStampResponse(asked.ask(request.getEncoded()));
      response.validate(request);
      if (response.getTimeStampToken() == null) {
        throw new IOException("the time-stamp authority refused: " + response.getStatusString());
      }
      return OneForm.formed(
              response.getTimeStampToken().toCMSSignedData().toASN1Structure(), Set.of())
          .orElseThrow(
              () -> new IOException("the time-stamp authority did not send its certificate"))
          .getEncoded(ASN1Encoding.DER);
    } catch (TSPException e) {
      throw new IOException("the time-stamp authority did not answer as asked: " + e.getMessage());
    }
  }
}
