package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mainsgate.report.Pdf;
import org.mainsgate.seal.Broken;
import org.mainsgate.seal.Seal;
import org.mainsgate.seal.SealedFile;
import org.mainsgate.seal.TrustList;
import org.mainsgate.seal.Verification;
import org.mainsgate.seal.VerificationText;
import org.mainsgate.seal.Verifier;
import org.mainsgate.signature.Signing;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.NewFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Signs for a record that somebody handed over. */
@Command(
    name = "accept",
    mixinStandardHelpOptions = true,
    header = "Sign that you know what a record says",
    description = {
      "",
      "Verifies a sealed record, shows what it says, and adds your signature in the",
      "place that was prepared for it. It says that you know what the record says; it",
      "takes over nobody's duty. The file that you got stays as it is.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate accept NL-01.pdf -o NL-01-accepted.pdf",
      "",
      "Ends with 0 if you have signed; 30 if the file was changed, and then nothing is",
      "signed."
    })
final class AcceptCommand implements Callable<Integer> {
  private final App app;

  @Parameters(index = "0", paramLabel = "FILE", description = "the sealed record")
  Path file;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      required = true,
      description = "the new PDF; nothing is ever written over")
  Path out;

  @Mixin OwnKey key = new OwnKey();

  AcceptCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    byte[] bytes = BoundedFile.read(file, SealedFile.MOST_BYTES);
    if (Files.exists(out)) {
      app.err()
          .println("`" + out + "` is there already; nothing is written over, give another name");
      return Exit.UNUSABLE.code();
    }
    Complaints complaints = new Complaints();
    TrustList trusted = Home.of(app).trusted(complaints).orElse(TrustList.NONE);
    app.err().print(complaints.renderAll());
    Verification found = Verifier.verify(bytes, trusted, app.today(), new Pdf());
    app.out().print(VerificationText.screen(file.toString(), found, List.of()));
    if (!found.broken().isEmpty()) {
      app.err().println("nothing was signed");
      return Exit.ALTERED.code();
    }
    Optional<Signing> signing = key.open(app);
    return (signing.isEmpty() ? Exit.UNUSABLE : accept(bytes, signing.get())).code();
  }

  private Exit accept(byte[] bytes, Signing signing) throws IOException {
    List<Broken> broken = new ArrayList<>();
    Optional<byte[]> accepted =
        Seal.accept(SealedFile.read(bytes, broken).orElseThrow(), signing, app.clock().instant());
    if (accepted.isEmpty()) {
      app.err().println("five people have accepted it; there is no place for one more");
      return Exit.UNUSABLE;
    }
    NewFile.write(out, accepted.get());
    app.out().println();
    app.out().println("accepted: " + out);
    app.out().println("  signed by " + signing.certified().name());
    app.out().println("  key " + signing.certified().fingerprint().spoken());
    return Exit.PASS;
  }
}
