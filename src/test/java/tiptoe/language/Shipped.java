package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.List;
import java.util.stream.Stream;
import tiptoe.OneAtATime;
import tiptoe.files.ContentCache;
import tiptoe.files.Sha256;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.tagger.Tagger;
import tiptoe.language.tagger.TaggerCache;
import tiptoe.protocol.Protocol;

/**
 * The grammars as they are shipped and the tagger trained on them, once for all tests of a process.
 */
public final class Shipped {
  private static final Path GRAMMARS = Path.of("grammars");

  private static PhraseNetwork network;
  private static TypedText typed;
  private static Tagger tagger;

  private Shipped() {}

  public static synchronized PhraseNetwork network() {
    if (network == null) {
      GrammarSet grammars = GrammarSet.load(GRAMMARS, "exam.gram");
      assertEquals(List.of(), grammars.problems());
      network = PhraseNetwork.of(grammars);
    }
    return network;
  }

  public static synchronized TypedText typed() throws IOException {
    if (typed == null) {
      typed = TypedText.load(Path.of("grammars/spellings.txt"));
    }
    return typed;
  }

  public static synchronized Tagger tagger() throws IOException {
    if (tagger == null) {
      tagger =
          OneAtATime.make(
              "tagger",
              () ->
                  new TaggerCache(new ContentCache(List.of(taggers())))
                      .get(GRAMMARS, network(), Protocol.standard(), typed(), () -> {}));
    }
    return tagger;
  }

  /** The file of the tagger, trained if it was not yet. */
  public static Path taggerFile() throws IOException {
    tagger();
    try (Stream<Path> files = Files.list(taggers())) {
      String hash = ContentCache.digits(TaggerCache.hash(GRAMMARS, Protocol.standard()));
      return files.filter(file -> file.toString().contains(hash)).findFirst().orElseThrow();
    }
  }

  private static Path taggers() throws IOException {
    return Path.of("target/taggers", code());
  }

  /** The code that trains, and its texts: a tagger that other code trained is never taken. */
  private static String code() throws IOException {
    MessageDigest digest = Sha256.start();
    for (String part : List.of("grammar", "language", "protocol")) {
      try (Stream<Path> files = Files.walk(Path.of("target/classes/tiptoe", part))) {
        for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
          digest.update(Sha256.of(file));
        }
      }
    }
    return ContentCache.digits(Sha256.hex(digest.digest()));
  }
}
