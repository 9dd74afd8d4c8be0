package org.mainsgate.cli;

import java.io.IOException;
import java.net.URI;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.signature.Identity;
import org.mainsgate.signature.Signing;
import org.mainsgate.signature.TimeStampAuthority;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A person's own key, opened to sign with. */
final class OwnKey {
  @Mixin Password password = new Password();

  @Option(
      names = "--timestamp",
      paramLabel = "URL",
      description =
          "who stamps the time (RFC 3161); MAINSGATE_TIMESTAMP if not given; nobody, if neither is")
  @Nullable URI authority;

  /** The key; empty after a complaint. */
  Optional<Signing> open(App app) throws IOException {
    Home home = Home.of(app);
    Optional<byte[]> file = home.key();
    if (file.isEmpty()) {
      app.err().println("no key of yours in " + home.keyFile());
      app.err().println("  make one: mainsgate identity new --name \"your name\"");
      return Optional.empty();
    }
    if (home.isKeyOpen()) {
      app.err()
          .println("note: others can read " + home.keyFile() + "; make it yours alone (chmod 600)");
    }
    Optional<char[]> secret = password.given(app, "password of your key: ");
    return secret.isPresent() ? open(app, file.get(), secret.get()) : Optional.empty();
  }

  private Optional<Signing> open(App app, byte[] file, char[] secret) {
    try {
      Identity identity = Identity.open(file, secret);
      LocalDate today = LocalDate.now(app.clock().withZone(ZoneOffset.UTC));
      Optional<String> late = identity.certified().complaintOn(today);
      late.ifPresent(why -> app.complain(why + "; today is " + today + ". Nothing was signed."));
      return late.isPresent()
          ? Optional.empty()
          : Optional.of(new Signing(identity, authority(app), new SecureRandom()));
    } catch (Identity.Unusable unusable) {
      app.err().println("your key can't be used: " + unusable.why());
      return Optional.empty();
    } finally {
      Arrays.fill(secret, ' ');
    }
  }

  private Optional<TimeStampAuthority> authority(App app) {
    return Optional.ofNullable(authority)
        .or(() -> app.around().variable("MAINSGATE_TIMESTAMP").map(URI::create))
        .map(HttpTimeStamps::new);
  }
}
