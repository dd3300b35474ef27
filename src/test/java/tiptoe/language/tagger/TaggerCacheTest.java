package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.FullOnly;
import tiptoe.files.ContentCache;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Shipped;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/** A tagger is trained once, and again when its file is damaged. */
class TaggerCacheTest {
  private static final Path GRAMMARS = Path.of("grammars");

  @TempDir private Path folder;

  /** A place that cannot be written to: there is a file where the folder would be. */
  private Path installed = Path.of("pom.xml");

  private final AtomicInteger trained = new AtomicInteger();

  @Test
  @FullOnly(
      "every test that understands words trains a tagger or reads the one that another trained")
  void readsWhatItTrainedAndTrainsTheSameAnewWhereItIsDamaged() throws IOException {
    PhraseNetwork network = Shipped.network();
    TypedText typed = Shipped.typed();
    // Trained by this test process or by another one: training takes long.
    Path file = folder.resolve(Shipped.taggerFile().getFileName());
    byte[] whole = Files.readAllBytes(Shipped.taggerFile());
    byte[] damaged = whole.clone();
    damaged[whole.length / 2] ^= 1;
    Files.write(file, damaged);
    List<String> words = typed.words("the right arm just hangs there");
    Tagger fresh = get(network, typed);
    assertEquals(1, trained.get());
    assertArrayEquals(whole, Files.readAllBytes(file));
    var first = fresh.read(words);
    assertEquals("arm-movement", first.claims().get(0).step());
    assertEquals(first, get(network, typed).read(words));
    List<String> talk = typed.words("we check them all for clicky hips");
    assertEquals(fresh.talk(talk), get(network, typed).talk(talk));
    assertEquals(1, trained.get());

    // The one beside an installed program is taken, and none is written.
    installed = Files.createDirectory(folder.resolve("installed"));
    Files.move(file, installed.resolve(file.getFileName()));
    assertEquals(first, get(network, typed).read(words));
    assertEquals(1, trained.get());
    assertFalse(Files.exists(file));
  }

  private Tagger get(PhraseNetwork network, TypedText typed) throws IOException {
    return new TaggerCache(new ContentCache(List.of(installed, folder)))
        .get(GRAMMARS, network, Protocol.standard(), typed, trained::incrementAndGet);
  }
}
