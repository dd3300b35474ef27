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
import tiptoe.files.ContentCache;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
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
  void readsWhatItTrainedAndTrainsTheSameAnewWhereItIsDamaged() throws IOException {
    PhraseNetwork network = PhraseNetwork.of(GrammarSet.load(GRAMMARS, "exam.gram"));
    TypedText typed = TypedText.load(GRAMMARS.resolve("spellings.txt"));
    List<String> words = typed.words("the right arm just hangs there");
    Tagger fresh = get(network, typed);
    var first = fresh.read(words);
    assertEquals("arm-movement", first.claims().get(0).step());
    assertEquals(first, get(network, typed).read(words));
    List<String> talk = typed.words("we check them all for clicky hips");
    assertEquals(fresh.talk(talk), get(network, typed).talk(talk));
    assertEquals(1, trained.get());
    byte[] whole = onlyFile();
    byte[] damaged = whole.clone();
    damaged[whole.length / 2] ^= 1;
    Files.write(folder.resolve(name()), damaged);
    assertEquals(first, get(network, typed).read(words));
    assertEquals(2, trained.get());
    assertArrayEquals(whole, onlyFile());

    // The one beside an installed program is taken, and none is written.
    String name = name();
    installed = Files.createDirectory(folder.resolve("installed"));
    Files.move(folder.resolve(name), installed.resolve(name));
    assertEquals(first, get(network, typed).read(words));
    assertEquals(2, trained.get());
    assertFalse(Files.exists(folder.resolve(name)));
  }

  private byte[] onlyFile() throws IOException {
    return Files.readAllBytes(folder.resolve(name()));
  }

  private String name() throws IOException {
    try (var files = Files.list(folder)) {
      return files.findFirst().orElseThrow().getFileName().toString();
    }
  }

  private Tagger get(PhraseNetwork network, TypedText typed) throws IOException {
    return new TaggerCache(new ContentCache(List.of(installed, folder)))
        .get(GRAMMARS, network, Protocol.standard(), typed, trained::incrementAndGet);
  }
}
