package org.mainsgate.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.mainsgate.seal.SealedFile;
import org.mainsgate.seal.TrustList;
import org.mainsgate.seal.Verifier;
import org.mainsgate.signature.Certificates;
import org.mainsgate.signature.Certified;
import org.mainsgate.signature.Identity;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Visible;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A person's own key, and the keys of others. */
@Command(
    name = "identity",
    mixinStandardHelpOptions = true,
    header = "Your key, and the keys that you know",
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      IdentityCommand.New.class,
      IdentityCommand.Show.class,
      IdentityCommand.Trust.class
    },
    description = {
      "",
      "A key signs what you hand over. That a signature fits proves the same key, not",
      "a person: the other side compares the fingerprint with you, over the telephone",
      "or face to face, and then knows whose key it is.",
      ""
    })
final class IdentityCommand implements Runnable {
  @Spec CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "which command: new, show or trust?");
  }

  private static void print(App app, Certified certified) {
    app.out().println("  name         " + certified.name());
    app.out()
        .println(
            "  key          " + certified.algorithm().orElse("of a kind that is not taken here"));
    app.out().println("  counts       " + certified.from() + " to " + certified.until());
    app.out()
        .println(
            "  says so      "
                + (certified.selfMade() ? "nobody but the key itself" : certified.issuer()));
    String groups = certified.fingerprint().spoken();
    app.out().println("  fingerprint  " + groups.substring(0, 29));
    app.out().println("               " + groups.substring(30));
  }

  /** Makes a key. */
  @Command(
      name = "new",
      mixinStandardHelpOptions = true,
      header = "Make a key of your own",
      description = {
        "",
        "Makes a key with a certificate that nobody else has signed, protected by a",
        "password, in MAINSGATE_HOME, else in `.mainsgate` in your home folder. A key",
        "that is there is never written over.",
        ""
      },
      footer = {"", "For example:", "  mainsgate identity new --name \"the restorer\""})
  static final class New implements Callable<Integer> {
    private final App app;

    @Option(
        names = "--name",
        paramLabel = "NAME",
        description = "how you are named in signatures; a role will do")
    @Nullable String name;

    @Option(names = "--rsa", description = "RSA with 3072 bits, in place of an elliptic curve")
    boolean rsa;

    @Option(
        names = "--from",
        paramLabel = "FILE",
        description =
            "take a key and certificate that you have, from a PKCS #12 under the password given")
    @Nullable Path from;

    @Mixin Password password = new Password();

    @Spec CommandSpec spec;

    New(App app) {
      this.app = app;
    }

    @Override
    public Integer call() throws IOException {
      if ((name == null || name.isBlank()) == (from == null)) {
        throw new ParameterException(
            spec.commandLine(), "either `--name` for a new key, or `--from` for one that you have");
      }
      Home home = Home.of(app);
      Optional<byte[]> there = home.key();
      if (there.isPresent()) {
        return finished(home, there.get()) ? Exit.PASS.code() : taken(home);
      }
      Optional<char[]> secret =
          from == null ? password.chosen(app) : password.given(app, "password of " + from + ": ");
      return (secret.isPresent() ? make(home, secret.get()) : Exit.UNUSABLE).code();
    }

    /**
     * Whether this only finished an earlier one, which was stopped when the key was there and was
     * not yet known to oneself. What it is given has to fit that key, the password too.
     */
    private boolean finished(Home home, byte[] key) throws IOException {
      Complaints complaints = new Complaints();
      Optional<TrustList> trusted = home.trusted(complaints);
      Optional<char[]> secret = password.given(app, "password of the key that is there: ");
      if (trusted.isEmpty() || secret.isEmpty()) {
        return false;
      }
      try {
        Certified own = Identity.open(key, secret.get()).certified();
        if (!isMeant(own, secret.get()) || trusted.get().nameOf(own.fingerprint()).isPresent()) {
          return false;
        }
        app.say("An earlier `identity new` was stopped after it had made the key; this ends it.");
        made(home, own);
        return true;
      } catch (Identity.Unusable another) {
        return false;
      } finally {
        Arrays.fill(secret.get(), ' ');
      }
    }

    private boolean isMeant(Certified own, char[] secret) throws IOException, Identity.Unusable {
      Path source = from;
      return source == null
          ? own.name().equals(String.valueOf(name).strip())
          : Identity.open(Files.readAllBytes(source), secret)
              .certified()
              .fingerprint()
              .equals(own.fingerprint());
    }

    /** One's own key is known to oneself. */
    private void know(Home home, Certified certified) throws IOException {
      LocalDate today = LocalDate.now(app.clock().withZone(ZoneOffset.UTC));
      Complaints complaints = new Complaints();
      TrustList.Key own =
          new TrustList.Key(certified.name() + " (your own key)", certified.fingerprint(), today);
      home.trust(before -> before.with(own), complaints);
      app.err().print(complaints.renderAll());
    }

    private void made(Home home, Certified certified) throws IOException {
      know(home, certified);
      app.out().println("made: " + home.keyFile());
      print(app, certified);
      app.say(
          "Keep a copy of the file and the password in another place. Give the fingerprint to"
              + " whoever gets your records, by another way than the records themselves.");
    }

    private int taken(Home home) {
      app.complain("there is a key in " + home.keyFile() + "; it is not written over");
      app.complain(
          "Move it to another place yourself, if you want a new one. Keep it: old records need it.");
      return Exit.UNUSABLE.code();
    }

    private Exit make(Home home, char[] secret) throws IOException {
      try {
        LocalDate today = LocalDate.now(app.clock().withZone(ZoneOffset.UTC));
        Identity.Kind kind = rsa ? Identity.Kind.RSA_3072 : Identity.Kind.EC_P256;
        Path source = from;
        Identity identity =
            source == null
                ? Identity.create(String.valueOf(name).strip(), kind, today, new SecureRandom())
                : Identity.open(Files.readAllBytes(source), secret);
        home.writeKey(identity.pkcs12(secret));
        made(home, identity.certified());
        return Exit.PASS;
      } catch (Identity.Unusable unusable) {
        app.err().println(from + ": " + unusable.why());
        return Exit.UNUSABLE;
      } catch (FileAlreadyExistsException e) {
        return taken(home) == 0 ? Exit.PASS : Exit.UNUSABLE;
      } finally {
        Arrays.fill(secret, ' ');
      }
    }
  }

  /** Shows it. */
  @Command(
      name = "show",
      mixinStandardHelpOptions = true,
      header = "Show your key's fingerprint, and the keys that you know",
      footer = {"", "For example:", "  mainsgate identity show"})
  static final class Show implements Callable<Integer> {
    private final App app;

    @Mixin Password password = new Password();

    Show(App app) {
      this.app = app;
    }

    @Override
    public Integer call() throws IOException {
      Home home = Home.of(app);
      Optional<byte[]> file = home.key();
      Exit exit = file.isPresent() ? own(home, file.get()) : Exit.PASS;
      if (file.isEmpty()) {
        app.out().println("no key of your own in " + home.folder());
      }
      Complaints complaints = new Complaints();
      Optional<TrustList> trusted = home.trusted(complaints);
      app.err().print(complaints.renderAll());
      trusted.ifPresent(this::others);
      return (trusted.isEmpty() ? Exit.UNUSABLE : exit).code();
    }

    private Exit own(Home home, byte[] file) throws IOException {
      Optional<char[]> secret = password.given(app, "password of your key: ");
      if (secret.isEmpty()) {
        return Exit.UNUSABLE;
      }
      try {
        Certified certified = Identity.open(file, secret.get()).certified();
        app.out().println("your key: " + home.keyFile());
        print(app, certified);
        LocalDate today = LocalDate.now(app.clock().withZone(ZoneOffset.UTC));
        certified.complaintOn(today).ifPresent(why -> app.out().println("  " + why));
        return Exit.PASS;
      } catch (Identity.Unusable unusable) {
        app.err().println("your key can't be used: " + unusable.why());
        return Exit.UNUSABLE;
      } finally {
        Arrays.fill(secret.get(), ' ');
      }
    }

    private void others(TrustList list) {
      for (TrustList.Key key : list.keys()) {
        app.out().println("known since " + key.since() + ": " + key.name());
        app.out().println("  " + key.fingerprint().spoken());
      }
      for (TrustList.Ruleset known : list.rules()) {
        app.out().println("rules known since " + known.since() + ": " + known.because());
        app.out().println("  " + known.identity());
      }
    }
  }

  /** Writes down that a key is known. */
  @Command(
      name = "trust",
      mixinStandardHelpOptions = true,
      header = "Write down whose key it is",
      description = {
        "",
        "Shows the fingerprint of the key that signed a file. With `--heard` and the",
        "same fingerprint, as its owner has read it out to you, the key is known from",
        "now on. Only what you heard from its owner counts; a fingerprint that came with",
        "the file proves nothing.",
        ""
      },
      footer = {
        "",
        "For example:",
        "  mainsgate identity trust NL-01.pdf",
        "  mainsgate identity trust NL-01.pdf --as \"the restorer\" \\",
        "      --heard \"31237 00197 00222 02246 46497 00650 36001 37593 07747 61298\""
      })
  static final class Trust implements Callable<Integer> {
    private final App app;

    @Parameters(index = "0", paramLabel = "FILE", description = "a sealed record, or a certificate")
    Path file;

    @Option(
        names = "--heard",
        paramLabel = "GROUPS",
        description = "the fingerprint that you heard")
    @Nullable String heard;

    @Option(names = "--as", paramLabel = "NAME", description = "whose key it is, in your words")
    @Nullable String name;

    Trust(App app) {
      this.app = app;
    }

    @Override
    public Integer call() throws IOException {
      Optional<Certified> found = certified();
      if (found.isEmpty()) {
        app.complain(
            file
                + ": neither a sealed record that is unchanged nor a certificate; its key is not written down");
        return Exit.UNUSABLE.code();
      }
      Certified certified = found.get();
      print(app, certified);
      if (heard == null) {
        app.say(
            "Ask its owner, by telephone or face to face, to read out the ten groups. If they are"
                + " the same, give what you heard with `--heard`. Nothing was written down.");
        return Exit.UNUSABLE.code();
      }
      if (!certified.fingerprint().isHeardAs(heard)) {
        app.complain(
            "what you heard is another fingerprint: this is not that key. Nothing was written down.");
        return Exit.SIGNER_UNKNOWN.code();
      }
      return write(certified).code();
    }

    private Exit write(Certified certified) throws IOException {
      Home home = Home.of(app);
      Complaints complaints = new Complaints();
      String called = name == null ? Visible.text(certified.name()) : name;
      LocalDate today = LocalDate.now(app.clock().withZone(ZoneOffset.UTC));
      TrustList.Key key = new TrustList.Key(called, certified.fingerprint(), today);
      boolean written = home.trust(before -> before.with(key), complaints);
      app.err().print(complaints.renderAll());
      if (!written) {
        return Exit.UNUSABLE;
      }
      app.out().println("known from now on: the key of " + called);
      return Exit.PASS;
    }

    private Optional<Certified> certified() throws IOException {
      byte[] bytes = BoundedFile.read(file, SealedFile.MOST_BYTES);
      return Certificates.read(new ByteArrayInputStream(bytes)).or(() -> Verifier.signerOf(bytes));
    }
  }
}
