package org.mainsgate.signature;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.Key;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.X500NameBuilder;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** A private key with its certificates, the key's own first. */
public final class Identity {
  private static final String ALIAS = "mainsgate";
  private static final int YEARS = 10;
  private static final int SERIAL_BITS = 127;

  private final PrivateKey key;
  private final List<X509Certificate> chain;

  private Identity(PrivateKey key, List<X509Certificate> chain) {
    this.key = key;
    this.chain = List.copyOf(chain);
  }

  /** The kinds of key that are made here. */
  public enum Kind {
    EC_P256("EC", "SHA256withECDSA"),
    RSA_3072("RSA", "SHA256withRSA");

    private final String family;
    private final String signing;

    Kind(String family, String signing) {
      this.family = family;
      this.signing = signing;
    }
  }

  /** Why a file of keys can't be used, in words for the person whose it is. */
  public static final class Unusable extends Exception {
    private static final long serialVersionUID = 1L;

    Unusable(String why) {
      super(why);
    }

    /** The words. */
    public String why() {
      return String.valueOf(getMessage());
    }
  }

  /**
   * Makes a new key and a certificate that nobody else has signed: it proves the same key, not a
   * person.
   *
   * @param name whom it names
   * @param from the first day on which it counts; it does so for ten years
   */
  public static Identity create(String name, Kind kind, LocalDate from, SecureRandom chance) {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance(kind.family);
      if (kind == Kind.EC_P256) {
        generator.initialize(new ECGenParameterSpec("secp256r1"), chance);
      } else {
        generator.initialize(3072, chance);
      }
      KeyPair pair = generator.generateKeyPair();
      return new Identity(pair.getPrivate(), List.of(certificate(name, kind, pair, from, chance)));
    } catch (GeneralSecurityException | OperatorCreationException | CertIOException e) {
      throw new IllegalStateException("every Java platform has these algorithms", e);
    }
  }

  private static X509Certificate certificate(
      String name, Kind kind, KeyPair pair, LocalDate from, SecureRandom chance)
      throws GeneralSecurityException, OperatorCreationException, CertIOException {
    X500Name subject = new X500NameBuilder(BCStyle.INSTANCE).addRDN(BCStyle.CN, name).build();
    X509v3CertificateBuilder builder =
        new JcaX509v3CertificateBuilder(
            subject,
            new BigInteger(SERIAL_BITS, chance).setBit(SERIAL_BITS - 1),
            Date.from(from.atStartOfDay().toInstant(ZoneOffset.UTC)),
            Date.from(
                from.plusYears(YEARS).atTime(LocalTime.of(23, 59, 59)).toInstant(ZoneOffset.UTC)),
            subject,
            pair.getPublic());
    builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
    builder.addExtension(
        Extension.keyUsage,
        true,
        new KeyUsage(KeyUsage.digitalSignature | KeyUsage.nonRepudiation));
    return new JcaX509CertificateConverter()
        .getCertificate(
            builder.build(new JcaContentSignerBuilder(kind.signing).build(pair.getPrivate())));
  }

  /**
   * Opens a file of keys.
   *
   * @param file the bytes of a PKCS #12 (RFC 7292)
   * @throws Unusable if the password is wrong, or there is not exactly one key in it with a
   *     certificate of its own, of a kind that is taken here
   */
  public static Identity open(byte[] file, char[] password) throws Unusable {
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(new ByteArrayInputStream(file), password);
      List<String> keys = new ArrayList<>();
      for (String alias : Collections.list(store.aliases())) {
        if (store.isKeyEntry(alias)) {
          keys.add(alias);
        }
      }
      if (keys.size() != 1) {
        throw new Unusable(keys.isEmpty() ? "there is no key in it" : "there is more than one key");
      }
      return new Identity(key(store, keys.get(0), password), chain(store, keys.get(0))).checked();
    } catch (IOException e) {
      throw new Unusable(
          e.getCause() instanceof UnrecoverableKeyException
              ? "the password is wrong"
              : "this is no file of keys (PKCS #12)");
    } catch (UnrecoverableKeyException e) {
      throw new Unusable("the password is wrong");
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      throw new Unusable("this is a file of keys that can't be read: " + e.getMessage());
    }
  }

  private static PrivateKey key(KeyStore store, String alias, char[] password)
      throws GeneralSecurityException, Unusable {
    Key key = store.getKey(alias, password);
    if (key instanceof PrivateKey found) {
      return found;
    }
    throw new Unusable("there is no private key in it");
  }

  private static List<X509Certificate> chain(KeyStore store, String alias)
      throws GeneralSecurityException, Unusable {
    Certificate[] chain = store.getCertificateChain(alias);
    List<X509Certificate> found = new ArrayList<>();
    for (Certificate one : chain == null ? new Certificate[0] : chain) {
      if (one instanceof X509Certificate certificate) {
        found.add(certificate);
      }
    }
    if (found.isEmpty()) {
      throw new Unusable("the key has no certificate with it");
    }
    return found;
  }

  private Identity checked() throws Unusable, GeneralSecurityException {
    PublicKey shown = chain.get(0).getPublicKey();
    if (Certified.algorithm(shown).isEmpty()) {
      throw new Unusable(
          "a key of a kind that is not taken here: EC P-256, EC P-384, or RSA from 3072 bits on");
    }
    Signature signature = Signature.getInstance(signing());
    byte[] probe = {1, 2, 3};
    signature.initSign(key);
    signature.update(probe);
    byte[] signed = signature.sign();
    signature.initVerify(shown);
    signature.update(probe);
    if (!signature.verify(signed)) {
      throw new Unusable("the first certificate is that of another key");
    }
    for (int i = 0; i + 1 < chain.size(); i++) {
      if (!chain
          .get(i)
          .getIssuerX500Principal()
          .equals(chain.get(i + 1).getSubjectX500Principal())) {
        throw new Unusable("its certificates do not follow each other");
      }
    }
    Certified own = certified();
    if (own.name().codePoints().anyMatch(Identity::isUnprintable)) {
      throw new Unusable("its certificate names somebody with characters that can't be printed");
    }
    if (chain.size() == 1 && !own.selfMade()) {
      throw new Unusable(
          "its certificate is signed by `"
              + own.issuer()
              + "`, whose certificate is not with it: bring the whole chain");
    }
    return this;
  }

  /** The name is printed, and has to be read again from the record as it was. */
  private static boolean isUnprintable(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.UNASSIGNED ->
          true;
      // Joiners and the soft hyphen belong to names; the rest turns text round.
      case Character.FORMAT -> c != 0xAD && c != 0x200C && c != 0x200D;
      default -> false;
    };
  }

  /** The bytes of a file of keys under this password. */
  public byte[] pkcs12(char[] password) {
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, password);
      store.setKeyEntry(ALIAS, key, password, chain.toArray(new Certificate[0]));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      store.store(out, password);
      return out.toByteArray();
    } catch (GeneralSecurityException | IOException e) {
      throw new IllegalStateException("every Java platform writes PKCS #12", e);
    }
  }

  /** What its certificate says. */
  public Certified certified() {
    return Certified.of(chain.get(0));
  }

  PrivateKey key() {
    return key;
  }

  List<X509Certificate> chain() {
    return chain;
  }

  /** The name of the algorithm that it signs with. */
  String signing() {
    String algorithm =
        Optional.of(chain.get(0).getPublicKey()).flatMap(Certified::algorithm).orElse("");
    return switch (algorithm) {
      case "EC P-256" -> "SHA256withECDSA";
      case "EC P-384" -> "SHA384withECDSA";
      default -> "SHA256withRSA";
    };
  }
}
