package org.mainsgate.source;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The example of the package's description. */
class PackageExampleTest {

  record Site(Text profile, @Nullable Text zone) {}

  @Test
  void readsAsThePackageSays() {
    Complaints complaints = new Complaints();
    Optional<Site> site =
        StrictYaml.readFields("bench.yaml", "profil: gb".getBytes(UTF_8), complaints)
            .flatMap(fields -> Binder.bind(fields, Site.class, complaints));
    assertTrue(site.isEmpty());
    assertEquals(
        """
        bench.yaml:1:1: unknown field `profil`
            profil: gb
            ^
          expected: one of `profile`, `zone`
          nearest: `profile`
        """,
        complaints.renderAll());
  }
}
