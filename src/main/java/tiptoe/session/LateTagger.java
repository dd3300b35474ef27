package tiptoe.session;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tiptoe.files.ContentCache;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.SecondReading;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.Tagger;
import tiptoe.language.tagger.TaggerCache;

/** The tagger, read or trained only once there is something that the grammars do not cover. */
public final class LateTagger implements SecondReading {
  private final Home home;
  private final PhraseNetwork network;
  private final TypedText typed;
  private Tagger tagger;

  LateTagger(Home home, PhraseNetwork network, TypedText typed) {
    this.home = home;
    this.network = network;
    this.typed = typed;
  }

  @Override
  public Reading read(List<String> words) {
    return ready().read(words);
  }

  @Override
  public Told told(List<String> words) {
    return ready().told(words);
  }

  @Override
  public double talk(List<String> words) {
    return ready().talk(words);
  }

  @Override
  public Parted parted(List<String> words) {
    return ready().parted(words);
  }

  @Override
  public Optional<LeftOut> leftOut(List<String> words) {
    return ready().leftOut(words);
  }

  @Override
  public List<String> headed(List<String> words) {
    return ready().headed(words);
  }

  @Override
  public Set<Integer> asides(List<String> words) {
    return ready().asides(words);
  }

  private synchronized Tagger ready() {
    try {
      getReady(System.err);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return tagger;
  }

  /**
   * Reads or trains it, where that has not been done yet.
   *
   * @param progress told what takes a while
   */
  synchronized void getReady(PrintStream progress) throws IOException {
    if (tagger == null) {
      tagger = get(progress);
    }
  }

  private Tagger get(PrintStream progress) throws IOException {
    return new TaggerCache(ContentCache.beside(home.folder().resolve("models")))
        .get(
            home.grammars(),
            network,
            home.protocol(),
            typed,
            () -> progress.println("training the tagger from the grammars"));
  }
}
