package org.mainsgate.signature;

import java.io.IOException;
import java.security.MessageDigest;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x9.X9ObjectIdentifiers;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.SignerInformationVerifier;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampToken;
import org.bouncycastle.util.Selector;
import org.bouncycastle.util.Store;

/**
 * Judges a signature over bytes, stricter than the formats are: one signer, the attributes that we
 * write and no others, a short list of algorithms, and DER that has one form only.
 */
public final class SignatureJudge {
  private static final Set<ASN1ObjectIdentifier> SIGNED =
      Set.of(
          CMSAttributes.contentType,
          CMSAttributes.messageDigest,
          PKCSObjectIdentifiers.id_aa_signingCertificateV2);
  private static final Set<ASN1ObjectIdentifier> DIGESTS =
      Set.of(NISTObjectIdentifiers.id_sha256, NISTObjectIdentifiers.id_sha384);
  private static final Set<ASN1ObjectIdentifier> ALGORITHMS =
      Set.of(
          X9ObjectIdentifiers.ecdsa_with_SHA256,
          X9ObjectIdentifiers.ecdsa_with_SHA384,
          PKCSObjectIdentifiers.rsaEncryption,
          PKCSObjectIdentifiers.sha256WithRSAEncryption);

  private static final Set<ASN1ObjectIdentifier> STAMP =
      Set.of(PKCSObjectIdentifiers.id_aa_signatureTimeStampToken);
  private static final String FORM =
      "the signature is not written in the one form that it may have";

  private final List<String> faults = new ArrayList<>();
  private Optional<Certified> signer = Optional.empty();
  private Optional<Judged.Stamped> stamped = Optional.empty();

  private SignatureJudge() {}

  /**
   * What is to be said of a signature, whatever the bytes are.
   *
   * @param der the signature
   * @param content what it should be over
   */
  public static Judged judge(byte[] der, byte[] content) {
    SignatureJudge judge = new SignatureJudge();
    try {
      judge.look(der, content);
    } catch (CMSException
        | IOException
        | CertificateException
        | OperatorCreationException
        | TSPException
        | RuntimeException unreadable) {
      // The library throws any of these on bytes that are no signature.
      judge.faults.add("the signature can't be read");
    }
    return new Judged(judge.faults, judge.signer, judge.stamped);
  }

  private void look(byte[] der, byte[] content)
      throws CMSException,
          IOException,
          CertificateException,
          OperatorCreationException,
          TSPException {
    ASN1Primitive read = ASN1Primitive.fromByteArray(der);
    ContentInfo info = ContentInfo.getInstance(read);
    if (!Arrays.equals(info.getEncoded(ASN1Encoding.DER), der)) {
      faults.add(FORM);
    }
    if (!info.getContentType().equals(PKCSObjectIdentifiers.signedData)) {
      faults.add("this is no signature but something else");
      return;
    }
    CMSSignedData signed = new CMSSignedData(new CMSProcessableByteArray(content), info);
    if (signed.toASN1Structure().getContent() == null || !signed.isDetachedSignature()) {
      faults.add("the signature brings bytes of its own to sign");
    }
    Collection<SignerInformation> signers = signed.getSignerInfos().getSigners();
    if (signers.size() != 1) {
      faults.add("the signature has " + signers.size() + " signers, not one");
      return;
    }
    one(signers.iterator().next(), signed.getCertificates());
    if (!OneForm.isOf(read, STAMP)) {
      faults.add(FORM);
    }
  }

  private void one(SignerInformation signature, Store<X509CertificateHolder> certificates)
      throws CMSException,
          CertificateException,
          OperatorCreationException,
          IOException,
          TSPException {
    Optional<X509CertificateHolder> holder = first(certificates.getMatches(sid(signature)));
    if (holder.isEmpty()) {
      faults.add("the signer's certificate is not with the signature");
      return;
    }
    X509Certificate certificate = new JcaX509CertificateConverter().getCertificate(holder.get());
    Certified who = Certified.of(certificate);
    signer = Optional.of(who);
    algorithms(signature, who);
    attributes(signature, certificate);
    boolean[] usage = certificate.getKeyUsage();
    if (usage != null && !usage[0] && !usage[1]) {
      faults.add("the signer's certificate is not made for signatures");
    }
    SignerInformationVerifier verifier =
        new JcaSimpleSignerInfoVerifierBuilder().build(certificate.getPublicKey());
    if (!signature.verify(verifier)) {
      faults.add("the signature does not fit the bytes: something was changed after it");
    }
    stamps(signature);
  }

  @SuppressWarnings("unchecked")
  private static Selector<X509CertificateHolder> sid(SignerInformation signature) {
    return (Selector<X509CertificateHolder>) (Selector<?>) signature.getSID();
  }

  private static Optional<X509CertificateHolder> first(Collection<X509CertificateHolder> all) {
    return all.stream().findFirst();
  }

  private void algorithms(SignerInformation signature, Certified who) {
    boolean known =
        who.algorithm().isPresent()
            && DIGESTS.contains(signature.getDigestAlgorithmID().getAlgorithm())
            && ALGORITHMS.contains(new ASN1ObjectIdentifier(signature.getEncryptionAlgOID()));
    if (!known) {
      faults.add("the signature is made in a way that is not taken here");
    }
  }

  private void attributes(SignerInformation signature, X509Certificate certificate)
      throws CertificateException {
    AttributeTable table = signature.getSignedAttributes();
    Set<ASN1ObjectIdentifier> seen = new HashSet<>();
    if (table != null) {
      for (Attribute attribute : table.toASN1Structure().getAttributes()) {
        seen.add(attribute.getAttrType());
        if (attribute.getAttrValues().size() != 1) {
          faults.add("an attribute of the signature has not one value");
        }
      }
    }
    if (!seen.equals(SIGNED) || table == null || table.size() != SIGNED.size()) {
      faults.add("the signature says other things than those that it should");
      return;
    }
    Attribute own = table.get(PKCSObjectIdentifiers.id_aa_signingCertificateV2);
    ESSCertIDv2[] ids =
        SigningCertificateV2.getInstance(own.getAttrValues().getObjectAt(0)).getCerts();
    boolean same =
        ids.length >= 1
            && ids[0].getHashAlgorithm().getAlgorithm().equals(NISTObjectIdentifiers.id_sha256)
            && MessageDigest.isEqual(
                ids[0].getCertHash(), Signing.sha256(certificate.getEncoded()));
    if (!same) {
      faults.add("the signature was made for another certificate");
    }
  }

  private void stamps(SignerInformation signature)
      throws IOException,
          CMSException,
          TSPException,
          CertificateException,
          OperatorCreationException {
    AttributeTable table = signature.getUnsignedAttributes();
    if (table == null || table.size() == 0) {
      return;
    }
    Attribute attribute = table.get(PKCSObjectIdentifiers.id_aa_signatureTimeStampToken);
    if (table.size() != 1 || attribute == null || attribute.getAttrValues().size() != 1) {
      faults.add("the signature carries something else than one time-stamp");
      return;
    }
    ASN1Primitive within = attribute.getAttrValues().getObjectAt(0).toASN1Primitive();
    TimeStampToken token = new TimeStampToken(ContentInfo.getInstance(within));
    if (!OneForm.isOf(within, Set.of())) {
      faults.add("the time-stamp is not written in the one form that it may have");
    }
    Optional<X509CertificateHolder> holder =
        first(token.getCertificates().getMatches(stampSid(token)));
    boolean over =
        token.getTimeStampInfo().getMessageImprintAlgOID().equals(NISTObjectIdentifiers.id_sha256)
            && MessageDigest.isEqual(
                token.getTimeStampInfo().getMessageImprintDigest(),
                Signing.sha256(signature.getSignature()));
    if (holder.isEmpty() || !over) {
      faults.add("the time-stamp is not one of this signature");
      return;
    }
    X509Certificate certificate = new JcaX509CertificateConverter().getCertificate(holder.get());
    // Checks the signature, the certificate's days and that it is made for time-stamps.
    token.validate(new JcaSimpleSignerInfoVerifierBuilder().build(certificate));
    stamped =
        Optional.of(
            new Judged.Stamped(
                token.getTimeStampInfo().getGenTime().toInstant(), Certified.of(certificate)));
  }

  @SuppressWarnings("unchecked")
  private static Selector<X509CertificateHolder> stampSid(TimeStampToken token) {
    return (Selector<X509CertificateHolder>) (Selector<?>) token.getSID();
  }
}
