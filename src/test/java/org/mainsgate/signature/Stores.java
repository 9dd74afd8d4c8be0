package org.mainsgate.signature;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.Date;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.X500NameBuilder;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509ExtensionUtils;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** Files of keys that something is wrong with. */
public final class Stores {
  private Stores() {}

  private interface Fill {
    void into(KeyStore store) throws GeneralSecurityException;
  }

  private static byte[] store(char[] password, Fill fill) {
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, password);
      fill.into(store);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      store.store(out, password);
      return out.toByteArray();
    } catch (GeneralSecurityException | IOException e) {
      throw new IllegalStateException(e);
    }
  }

  static byte[] empty(char[] password) {
    return store(password, store -> {});
  }

  static byte[] two(Identity key, char[] password) {
    X509Certificate[] chain = key.chain().toArray(new X509Certificate[0]);
    return store(
        password,
        store -> {
          store.setKeyEntry("one", key.key(), password, chain);
          store.setKeyEntry("two", key.key(), password, chain);
        });
  }

  static byte[] mixed(Identity key, Identity other, char[] password) {
    X509Certificate[] chain = other.chain().toArray(new X509Certificate[0]);
    return store(password, store -> store.setKeyEntry("one", key.key(), password, chain));
  }

  /** A key of the curve whose certificate an authority signed, and that another, of itself. */
  public static byte[] chained(String name, String curve, char[] password) {
    try {
      KeyPair root = ec("secp256r1");
      KeyPair middle = ec("secp256r1");
      KeyPair own = ec(curve);
      String by = "SHA256withECDSA";
      X509Certificate[] chain = {
        certificate(own, name, "a middle office", middle, by, 3),
        certificate(middle, "a middle office", "a first office", root, by, 2),
        certificate(root, "a first office", "a first office", root, by, 1)
      };
      return store(password, store -> store.setKeyEntry("one", own.getPrivate(), password, chain));
    } catch (GeneralSecurityException | OperatorCreationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static KeyPair ec(String curve) throws GeneralSecurityException {
    KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
    generator.initialize(new ECGenParameterSpec(curve));
    return generator.generateKeyPair();
  }

  static byte[] weak(char[] password) {
    return rsa(2048, "too short", "too short", password);
  }

  static byte[] withoutChain(char[] password) {
    return rsa(3072, "one of many", "somebody else", password);
  }

  private static byte[] rsa(int bits, String name, String issuer, char[] password) {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
      generator.initialize(bits);
      KeyPair pair = generator.generateKeyPair();
      X509Certificate certificate = certificate(pair, name, issuer, pair, "SHA256withRSA", 1);
      PrivateKey key = pair.getPrivate();
      return store(
          password,
          store -> store.setKeyEntry("one", key, password, new X509Certificate[] {certificate}));
    } catch (GeneralSecurityException | OperatorCreationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static X509Certificate certificate(
      KeyPair pair, String named, String by, KeyPair signer, String algorithm, int serial)
      throws GeneralSecurityException, OperatorCreationException {
    X500Name name = new X500NameBuilder(BCStyle.INSTANCE).addRDN(BCStyle.CN, named).build();
    X500Name issuer = new X500NameBuilder(BCStyle.INSTANCE).addRDN(BCStyle.CN, by).build();
    Date from = Date.from(Instant.parse("2026-01-01T00:00:00Z"));
    Date until = Date.from(Instant.parse("2036-01-01T00:00:00Z"));
    JcaX509v3CertificateBuilder builder =
        new JcaX509v3CertificateBuilder(
            issuer, BigInteger.valueOf(serial), from, until, name, pair.getPublic());
    boolean office = named.endsWith("office");
    try {
      builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(office));
      builder.addExtension(
          Extension.keyUsage,
          true,
          new KeyUsage(office ? KeyUsage.keyCertSign : KeyUsage.nonRepudiation));
      builder.addExtension(
          Extension.authorityKeyIdentifier,
          false,
          new JcaX509ExtensionUtils().createAuthorityKeyIdentifier(signer.getPublic()));
      builder.addExtension(
          Extension.subjectKeyIdentifier,
          false,
          new JcaX509ExtensionUtils().createSubjectKeyIdentifier(pair.getPublic()));
    } catch (CertIOException e) {
      throw new IllegalStateException(e);
    }
    return new JcaX509CertificateConverter()
        .getCertificate(
            builder.build(new JcaContentSignerBuilder(algorithm).build(signer.getPrivate())));
  }
}
