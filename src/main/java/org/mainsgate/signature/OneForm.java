package org.mainsgate.signature;

import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1EncodableVector;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.ASN1Set;
import org.bouncycastle.asn1.DERNull;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.DERSequence;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.DERTaggedObject;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSObjectIdentifiers;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.asn1.cms.IssuerAndSerialNumber;
import org.bouncycastle.asn1.cms.SignedData;
import org.bouncycastle.asn1.cms.SignerInfo;
import org.bouncycastle.asn1.ess.ESSCertID;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificate;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.oiw.OIWObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.Certificate;

/**
 * The one form in which the parts of a CMS that no signature covers may stand, so that no change of
 * them goes by: each of them says again what is covered, or is not there. A certificate stands
 * there only if the signed attributes name it by its digest (RFC 5035; RFC 2634 with SHA-1, which
 * older time-stamp authorities still use).
 */
final class OneForm {
  private static final Set<ASN1ObjectIdentifier> RSA =
      Set.of(
          PKCSObjectIdentifiers.rsaEncryption,
          PKCSObjectIdentifiers.sha256WithRSAEncryption,
          PKCSObjectIdentifiers.sha384WithRSAEncryption,
          PKCSObjectIdentifiers.sha512WithRSAEncryption);

  private OneForm() {}

  /** A certificate by its digest. */
  private record Named(ASN1ObjectIdentifier algorithm, ASN1OctetString digest) {
    boolean isOf(ASN1Encodable certificate) {
      try {
        byte[] der = certificate.toASN1Primitive().getEncoded(ASN1Encoding.DER);
        byte[] found = MessageDigest.getInstance(algorithm.getId()).digest(der);
        return digest.equals(new DEROctetString(found));
      } catch (NoSuchAlgorithmException | IOException unknown) {
        return false;
      }
    }
  }

  /**
   * Whether it stands in that form, with each certificate that is named.
   *
   * @param signature as it was read: a CMS object would already have put right what it was made of
   * @param unsigned what may stand beside the signature without being signed
   */
  static boolean isOf(ASN1Primitive signature, Set<ASN1ObjectIdentifier> unsigned) {
    ContentInfo info = ContentInfo.getInstance(signature);
    Optional<ContentInfo> formed = formed(info, unsigned);
    return formed.isPresent() && same(formed.get(), signature) && isWhole(data(info));
  }

  private static boolean isWhole(SignedData data) {
    return named(signer(data)).size() == data.getCertificates().size();
  }

  private static SignedData data(ContentInfo signature) {
    return SignedData.getInstance(signature.getContent());
  }

  /**
   * The same in that form, without what is not named.
   *
   * @param unsigned what may stand beside the signature without being signed
   * @return empty if there is not one signer, whose certificate is with it and named first
   */
  static Optional<ContentInfo> formed(ContentInfo signature, Set<ASN1ObjectIdentifier> unsigned) {
    return formed(data(signature), unsigned)
        .map(data -> new ContentInfo(CMSObjectIdentifiers.signedData, data));
  }

  private static Optional<SignedData> formed(SignedData data, Set<ASN1ObjectIdentifier> unsigned) {
    if (data.getSignerInfos().size() != 1 || data.getCertificates() == null) {
      return Optional.empty();
    }
    SignerInfo signer = signer(data);
    List<Named> named = named(signer);
    List<ASN1Encodable> certificates = new ArrayList<>();
    for (Named one : named) {
      for (ASN1Encodable certificate : data.getCertificates()) {
        if (one.isOf(certificate)) {
          certificates.add(certificate);
        }
      }
    }
    if (certificates.isEmpty() || !named.get(0).isOf(certificates.get(0))) {
      return Optional.empty();
    }
    SignerInfo formed = formed(signer, Certificate.getInstance(certificates.get(0)), unsigned);
    return Optional.of(
        SignedData.getInstance(
            sequence(
                version(data),
                new DERSet(formed.getDigestAlgorithm()),
                content(data.getEncapContentInfo()),
                new DERTaggedObject(
                    false, 0, new DERSet(certificates.toArray(new ASN1Encodable[0]))),
                new DERSet(formed))));
  }

  /** Octets only: of another type the digest would be the same, as it leaves the tag out. */
  private static ContentInfo content(ContentInfo signed) {
    return signed.getContent() == null
        ? signed
        : new ContentInfo(
            signed.getContentType(),
            new DEROctetString(ASN1OctetString.getInstance(signed.getContent()).getOctets()));
  }

  private static SignerInfo signer(SignedData data) {
    return SignerInfo.getInstance(data.getSignerInfos().getObjectAt(0));
  }

  /** RFC 5652, 5.1: 1 over plain data, 3 over anything else. */
  private static ASN1Integer version(SignedData data) {
    boolean plain =
        data.getEncapContentInfo().getContentType().equals(CMSObjectIdentifiers.data)
            && signer(data).getVersion().hasValue(1);
    return new ASN1Integer(plain ? 1 : 3);
  }

  private static SignerInfo formed(
      SignerInfo signer, Certificate certificate, Set<ASN1ObjectIdentifier> unsigned) {
    boolean byKey = signer.getSID().isTagged();
    ASN1Encodable sid =
        byKey
            ? signer.getSID()
            : new IssuerAndSerialNumber(
                certificate.getIssuer(), certificate.getSerialNumber().getValue());
    ASN1EncodableVector kept = new ASN1EncodableVector();
    ASN1Set beside = signer.getUnauthenticatedAttributes();
    for (ASN1Encodable one : beside == null ? new DERSet() : beside) {
      if (unsigned.contains(Attribute.getInstance(one).getAttrType())) {
        kept.add(one);
      }
    }
    List<ASN1Encodable> parts =
        new ArrayList<>(
            List.of(
                new ASN1Integer(byKey ? 3 : 1),
                sid,
                plain(signer.getDigestAlgorithm()),
                new DERTaggedObject(false, 0, signer.getAuthenticatedAttributes()),
                signing(signer.getDigestEncryptionAlgorithm()),
                new DEROctetString(signer.getEncryptedDigest().getOctets())));
    if (kept.size() > 0) {
      parts.add(new DERTaggedObject(false, 1, new DERSet(kept)));
    }
    return SignerInfo.getInstance(sequence(parts.toArray(new ASN1Encodable[0])));
  }

  private static DERSequence sequence(ASN1Encodable... parts) {
    return new DERSequence(parts);
  }

  /** A digest has no parameters; RFC 5754, 2, wants them left out. */
  private static AlgorithmIdentifier plain(AlgorithmIdentifier digest) {
    return new AlgorithmIdentifier(digest.getAlgorithm());
  }

  /** RSA goes by one name, whatever the digest (RFC 3370, 3.2); the others say their digest. */
  private static AlgorithmIdentifier signing(AlgorithmIdentifier algorithm) {
    return RSA.contains(algorithm.getAlgorithm())
        ? new AlgorithmIdentifier(PKCSObjectIdentifiers.rsaEncryption, DERNull.INSTANCE)
        : algorithm;
  }

  /** The certificates that the signed attributes name, in their order. */
  private static List<Named> named(SignerInfo signer) {
    ASN1Set signed = signer.getAuthenticatedAttributes();
    AttributeTable attributes = signed == null ? null : new AttributeTable(signed);
    Attribute now =
        attributes == null
            ? null
            : attributes.get(PKCSObjectIdentifiers.id_aa_signingCertificateV2);
    Attribute old =
        attributes == null ? null : attributes.get(PKCSObjectIdentifiers.id_aa_signingCertificate);
    if (now != null) {
      return Arrays.stream(SigningCertificateV2.getInstance(value(now)).getCerts())
          .map(OneForm::named)
          .toList();
    }
    return old == null
        ? List.of()
        : Arrays.stream(SigningCertificate.getInstance(value(old)).getCerts())
            .map(OneForm::named)
            .toList();
  }

  private static Named named(ESSCertIDv2 id) {
    return new Named(id.getHashAlgorithm().getAlgorithm(), new DEROctetString(id.getCertHash()));
  }

  private static Named named(ESSCertID id) {
    return new Named(OIWObjectIdentifiers.idSHA1, new DEROctetString(id.getCertHash()));
  }

  private static ASN1Encodable value(Attribute attribute) {
    return attribute.getAttrValues().getObjectAt(0);
  }

  private static boolean same(ASN1Encodable one, ASN1Encodable other) {
    try {
      return Arrays.equals(
          one.toASN1Primitive().getEncoded(ASN1Encoding.DER),
          other.toASN1Primitive().getEncoded(ASN1Encoding.DER));
    } catch (IOException unwritable) {
      return false;
    }
  }
}
