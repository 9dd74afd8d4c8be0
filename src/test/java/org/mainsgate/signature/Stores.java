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
import java.time.Instant;
import java.util.Date;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** Files of keys that something is wrong with. */
final class Stores {
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
      X509Certificate certificate = certificate(pair, name, issuer);
      PrivateKey key = pair.getPrivate();
      return store(
          password,
          store -> store.setKeyEntry("one", key, password, new X509Certificate[] {certificate}));
    } catch (GeneralSecurityException | OperatorCreationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static X509Certificate certificate(KeyPair pair, String named, String by)
      throws GeneralSecurityException, OperatorCreationException {
    X500Name name = new X500Name("CN=" + named);
    X500Name issuer = new X500Name("CN=" + by);
    Date from = Date.from(Instant.parse("2026-01-01T00:00:00Z"));
    Date until = Date.from(Instant.parse("2036-01-01T00:00:00Z"));
    return new JcaX509CertificateConverter()
        .getCertificate(
            new JcaX509v3CertificateBuilder(
                    issuer, BigInteger.ONE, from, until, name, pair.getPublic())
                .build(new JcaContentSignerBuilder("SHA256withRSA").build(pair.getPrivate())));
  }
}
