package org.mainsgate.signature;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.util.CollectionStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Keys and signatures over bytes. */
class SigningTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final char[] PASSWORD = "a long enough sentence".toCharArray();
  private static final byte[] CONTENT = "what is signed: 0.13 Ω".getBytes(UTF_8);
  private static final Identity KEY = key("the restorer", Identity.Kind.EC_P256);

  private static Identity key(String name, Identity.Kind kind) {
    return Identity.create(name, kind, DAY, new SecureRandom());
  }

  private static byte[] sign(Identity identity) throws IOException {
    return new Signing(identity, Optional.empty(), new SecureRandom()).sign(CONTENT);
  }

  @ParameterizedTest
  @EnumSource(Identity.Kind.class)
  void whatIsSignedIsFoundGoodAndNamesItsSigner(Identity.Kind kind) throws Exception {
    Identity identity = key("the keeper of the collection, Ω", kind);
    Judged judged = SignatureJudge.judge(sign(identity), CONTENT);
    assertEquals(List.of(), judged.faults());
    assertEquals(Optional.of(identity.certified()), judged.signer());
    assertEquals("the keeper of the collection, Ω", judged.signer().orElseThrow().name());
    assertEquals(Optional.empty(), judged.stamped());
  }

  @Test
  void otherBytesAreNoticed() throws Exception {
    byte[] der = sign(KEY);
    assertFalse(
        SignatureJudge.judge(der, "what is signed: 0.12 Ω".getBytes(UTF_8)).faults().isEmpty());
  }

  /** The signatures that there are: by each kind of key, with a chain, with a time-stamp. */
  private static List<Arguments> kinds() throws Exception {
    return List.of(
        arguments("EC P-256", KEY, Optional.empty()),
        arguments("RSA", key("the keeper", Identity.Kind.RSA_3072), Optional.empty()),
        arguments("a chain", chained("secp256r1"), Optional.empty()),
        arguments("EC P-384 with a chain", chained("secp384r1"), Optional.empty()),
        arguments("stamped", KEY, Optional.of(new StampingAuthority())),
        arguments("stamped, with a chain", KEY, Optional.of(StampingAuthority.chained())));
  }

  private static Identity chained(String curve) throws Identity.Unusable {
    return Identity.open(Stores.chained("the restorer", curve, PASSWORD), PASSWORD);
  }

  /** All 255 other values of each byte with {@code -Deverything}, else two of them. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("kinds")
  void noByteOfASignatureIsAnotherUnnoticed(
      String kind, Identity key, Optional<TimeStampAuthority> authority) throws Exception {
    byte[] der = new Signing(key, authority, new SecureRandom()).sign(CONTENT);
    assertEquals(List.of(), SignatureJudge.judge(der, CONTENT).faults());
    Queue<String> unnoticed = new ConcurrentLinkedQueue<>();
    IntStream.range(0, der.length)
        .parallel()
        .forEach(
            at ->
                others(at)
                    .filter(other -> isGood(der, at, other))
                    .forEach(other -> unnoticed.add(at + " ^ " + other)));
    assertEquals(List.of(), List.copyOf(unnoticed));
  }

  private static IntStream others(int at) {
    return System.getProperty("everything") == null
        ? IntStream.of(1 << (at % 8), 1 + (at * 31 + 9) % 255).distinct()
        : IntStream.range(1, 256);
  }

  private static boolean isGood(byte[] der, int at, int other) {
    byte[] changed = der.clone();
    changed[at] ^= (byte) other;
    return SignatureJudge.judge(changed, CONTENT).faults().isEmpty();
  }

  /** The object identifiers of two names for RSA differ in one byte (RFC 8017, A.2). */
  @Test
  void theOtherNameOfRsaIsNoticed() throws Exception {
    byte[] der = sign(key("the keeper", Identity.Kind.RSA_3072));
    byte[] plain = PKCSObjectIdentifiers.rsaEncryption.getEncoded();
    int found = 0;
    for (int at = 0; at + plain.length <= der.length; at++) {
      if (Arrays.equals(plain, Arrays.copyOfRange(der, at, at + plain.length))) {
        assertFalse(isGood(der, at + plain.length - 1, 1 ^ 11));
        found++;
      }
    }
    assertEquals(2, found, "the key's and the signature's");
  }

  @Test
  void theCertificatesOfAChainGoWithTheSignature() throws Exception {
    CMSSignedData signed = new CMSSignedData(sign(chained("secp256r1")));
    assertEquals(3, signed.getCertificates().getMatches(null).size());
    CMSSignedData fewer =
        CMSSignedData.replaceCertificatesAndCRLs(
            signed,
            new CollectionStore<>(
                signed.getCertificates().getMatches(null).stream()
                    .filter(one -> !one.getSubject().equals(one.getIssuer()))
                    .toList()),
            null,
            null);
    byte[] der = fewer.toASN1Structure().getEncoded(ASN1Encoding.DER);
    assertEquals(
        List.of("the signature is not written in the one form that it may have"),
        SignatureJudge.judge(der, CONTENT).faults());
  }

  @Property(tries = 300)
  void anyBytesAreNoSignature(@ForAll byte[] bytes) {
    assertFalse(SignatureJudge.judge(bytes, CONTENT).faults().isEmpty());
  }

  @Property(tries = 100)
  void aSignatureWithAnotherPieceIsNone(@ForAll byte[] bytes, @ForAll long seed) throws Exception {
    byte[] der = sign(KEY);
    byte[] changed = der.clone();
    int at = new Random(seed).nextInt(der.length);
    System.arraycopy(bytes, 0, changed, at, Math.min(bytes.length, der.length - at));
    boolean same = java.util.Arrays.equals(der, changed);
    assertEquals(same, SignatureJudge.judge(changed, CONTENT).faults().isEmpty());
  }

  @Test
  void aTimeStampStandsWithTheSignature() throws Exception {
    StampingAuthority authority = new StampingAuthority();
    byte[] der = new Signing(KEY, Optional.of(authority), new SecureRandom()).sign(CONTENT);
    Judged judged = SignatureJudge.judge(der, CONTENT);
    assertEquals(List.of(), judged.faults());
    assertEquals("a clock for tests", judged.stamped().orElseThrow().by().name());
    assertEquals(StampingAuthority.TIME, judged.stamped().orElseThrow().at());
  }

  @Test
  void anAuthorityThatAnswersSomethingElseIsNotBelieved() {
    Signing garbled = new Signing(KEY, Optional.of(request -> new byte[] {1}), new SecureRandom());
    assertThrows(IOException.class, () -> garbled.sign(CONTENT));
    StampingAuthority authority = new StampingAuthority();
    byte[] old = assertAnswer(authority);
    Signing replayed = new Signing(KEY, Optional.of(request -> old), new SecureRandom());
    assertThrows(IOException.class, () -> replayed.sign(CONTENT));
  }

  private static byte[] assertAnswer(StampingAuthority authority) {
    List<byte[]> answers = new ArrayList<>();
    TimeStampAuthority kept =
        request -> {
          byte[] answer = authority.ask(request);
          answers.add(answer);
          return answer;
        };
    try {
      assertTrue(new Signing(KEY, Optional.of(kept), new SecureRandom()).sign(CONTENT).length > 0);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return answers.get(0);
  }

  @ParameterizedTest
  @EnumSource(Identity.Kind.class)
  void aKeyIsKeptUnderItsPassword(Identity.Kind kind) throws Exception {
    Identity identity = key("the restorer", kind);
    byte[] file = identity.pkcs12(PASSWORD);
    assertEquals(identity.certified(), Identity.open(file, PASSWORD).certified());
  }

  @Test
  void aFileOfKeysThatCannotBeUsedSaysWhy() {
    byte[] file = KEY.pkcs12(PASSWORD);
    assertEquals("the password is wrong", why(file, "another sentence".toCharArray()));
    assertEquals("this is no file of keys (PKCS #12)", why(new byte[] {1, 2, 3}, PASSWORD));
    assertEquals("there is no key in it", why(Stores.empty(PASSWORD), PASSWORD));
    assertEquals("there is more than one key", why(Stores.two(KEY, PASSWORD), PASSWORD));
    assertEquals(
        "the first certificate is that of another key",
        why(Stores.mixed(KEY, key("another", Identity.Kind.EC_P256), PASSWORD), PASSWORD));
    assertTrue(
        why(Stores.weak(PASSWORD), PASSWORD).startsWith("a key of a kind that is not taken"));
  }

  @Test
  void aKeyWithoutItsChainIsRefused() {
    assertEquals(
        "its certificate is signed by `somebody else`, whose certificate is not with it: bring the"
            + " whole chain",
        why(Stores.withoutChain(PASSWORD), PASSWORD));
  }

  @ParameterizedTest
  @ValueSource(strings = {"a\nb", "a\u0007b", "a\u2028b", "a\u202eb"})
  void aNameThatIsNotOneLineOfPrintIsRefused(String name) {
    assertEquals(
        "its certificate names somebody with characters that can't be printed",
        why(Stores.chained(name, "secp256r1", PASSWORD), PASSWORD));
  }

  private static String why(byte[] file, char[] password) {
    return assertThrows(Identity.Unusable.class, () -> Identity.open(file, password)).why();
  }

  @Test
  void aCertificateCountsForTenYearsFromItsDay() {
    assertEquals(Optional.empty(), KEY.certified().complaintOn(DAY));
    assertEquals(Optional.empty(), KEY.certified().complaintOn(DAY.plusYears(10)));
    assertTrue(KEY.certified().complaintOn(DAY.minusDays(1)).isPresent());
    assertTrue(KEY.certified().complaintOn(DAY.plusYears(10).plusDays(1)).isPresent());
  }

  /** SHA-256 of no bytes, FIPS 180-4 and its published examples: e3b0c442 98fc1c14 ... */
  @Test
  void aFingerprintIsReadOutInTenGroups() {
    Fingerprint nothing = Fingerprint.of(new byte[0]);
    assertEquals("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855", nothing.hex());
    assertEquals("58288 50242 39164 07188 39675 62664 39279 47396 10158 16868", nothing.spoken());
    assertTrue(nothing.isHeardAs("58288-50242-39164 07188\n39675 62664 39279 47396 10158 16868"));
    assertTrue(nothing.isHeardAs(nothing.hex()));
    assertFalse(nothing.isHeardAs("58288 50242 39164 07188 39675 62664 39279 47396 10158 16869"));
    assertFalse(nothing.isHeardAs("58288"));
    assertFalse(nothing.isHeardAs(""));
  }
}
