package tiptoe.session;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tiptoe.OneAtATime;
import tiptoe.audio.Pcm;
import tiptoe.files.ContentCache;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.language.Shipped;
import tiptoe.session.UtteranceVerifier.Decision;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Joiner;
import tiptoe.speech.Recogniser;

/** The engine, and what an examination that just begins decides about what it hears. */
public final class Hearing {
  private static Hearing loaded;
  private static Understanding understood;

  private final UtteranceVerifier verifier = UtteranceVerifier.standard();
  private final Understanding understanding;
  private final Engine engine;

  Hearing(Settings settings) throws IOException {
    understanding = understood();
    engine = open(understanding, settings);
  }

  private static Engine open(Understanding understanding, Settings settings) throws IOException {
    return OneAtATime.make(
        "engine",
        () -> {
          Engine opened = Engine.open(Home.locate(), understanding, null, settings, System.err);
          if (!opened.hearsFreeWordings()) {
            throw new IOException("expected free wordings to be heard");
          }
          return opened;
        });
  }

  /** Loaded once for all tests of a process, and freed with it. */
  public static synchronized Hearing loaded() {
    if (loaded == null) {
      try {
        loaded = new Hearing(Settings.DEFAULT);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return loaded;
  }

  /** The grammars and what reads beyond them, loaded once for all tests of a process. */
  public static synchronized Understanding understood() {
    if (understood == null) {
      try {
        Understanding loading = Understanding.load(Home.locate());
        if (OneAtATime.isBeingMade("tagger")) {
          // Instead of waiting for it: graphs need none, and the tests of hearing need them.
          open(loading, Settings.DEFAULT).close();
        }
        keepTagger();
        understood = loading;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return understood;
  }

  /** Puts the tagger that this code trains where the program looks for it: training takes long. */
  private static void keepTagger() throws IOException {
    byte[] trained = Files.readAllBytes(Shipped.taggerFile());
    ContentCache cache = ContentCache.beside(Home.locate().folder().resolve("models"));
    cache.put(
        Shipped.taggerFile().getFileName().toString(),
        part -> Files.write(part, trained),
        kept -> Files.isRegularFile(kept) && Arrays.equals(trained, Files.readAllBytes(kept)));
  }

  public Engine engine() {
    return engine;
  }

  public Understanding understanding() {
    return understanding;
  }

  /** The utterances of a sound, put together as an examination does. */
  public List<Hypothesis> utterances(Pcm sound) {
    Joiner joiner = new Joiner(new ContinuablePhrases(understanding.network()));
    List<Hypothesis> heard = new ArrayList<>();
    try (Recogniser recogniser = engine.recogniser()) {
      recogniser.accept(sound.samples()).forEach(one -> heard.addAll(joiner.hear(one)));
      recogniser.finish().ifPresent(one -> heard.addAll(joiner.hear(one)));
    }
    heard.addAll(joiner.end());
    return heard;
  }

  /** What is decided about each utterance of a sound. */
  List<Decision> decide(Pcm sound) {
    return utterances(sound).stream()
        .map(utterance -> verifier.decide(utterance, this::interpret, false))
        .toList();
  }

  /** What is taken from a sound without a question. */
  List<Meaning> accepted(Pcm sound) {
    return decide(sound).stream()
        .filter(one -> one.outcome() == Outcome.ACCEPTED || one.outcome() == Outcome.COMMAND)
        .flatMap(one -> one.interpretation().meanings().stream())
        .toList();
  }

  /** What a text means, as it is written in a script. */
  List<Meaning> means(String text) {
    return interpret(understanding.typed().words(text)).meanings();
  }

  Interpretation interpret(List<String> words) {
    return understanding.interpreter().interpret(words, Dialogue.START, Source.GRAMMAR);
  }
}
