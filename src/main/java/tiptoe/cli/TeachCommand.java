package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.session.Engine;
import tiptoe.session.Home;
import tiptoe.session.OwnWords;
import tiptoe.session.Teaching;
import tiptoe.session.TrialSentence;
import tiptoe.session.Understanding;
import tiptoe.speech.Recogniser;

/** Teaches how a word is said here. */
@Command(
    name = "teach",
    description = {
      "Teaches another way to say a word of the grammars.",
      "It is given as words it sounds like, or as phones.",
      "The usual ways stay understood."
    },
    footer = {
      "",
      "Example: tiptoe teach fontanelle \"fountain nell\" --try",
      "         tiptoe teach fontanelle --phones \"F AA N T AH N EH L\"",
      "         tiptoe teach --list",
      "         tiptoe teach --forget fontanelle"
    })
final class TeachCommand implements Callable<Integer> {
  @Parameters(index = "0", arity = "0..1", paramLabel = "WORD", description = "The word.")
  private String word;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SOUNDS-LIKE",
      description = "Known words that together sound like it.")
  private String soundsLike;

  @Option(names = "--phones", paramLabel = "PHONES", description = "Its phones, in ARPABET.")
  private String phones;

  @Option(names = "--list", description = "Show what was taught.")
  private boolean list;

  @Option(names = "--forget", paramLabel = "WORD", description = "Forget what was taught of it.")
  private String forget;

  @Option(names = "--anyway", description = "Though it sounds just like another word.")
  private boolean anyway;

  @Option(names = "--try", description = "Then say it into the microphone.")
  private boolean trial;

  @Option(names = "--from", paramLabel = "FILE", description = "Then hear it in a recording.")
  private Path from;

  @Option(names = "--device", paramLabel = "NAME", description = "The microphone, or a part of it.")
  private String device;

  @Option(names = "--model", paramLabel = "DIR", description = "Another speech model folder.")
  private Path model;

  @Mixin private SettingsOption option;

  private OwnWords own;

  @Override
  public Integer call() throws IOException {
    // Not sooner: every command makes this one, also where its place cannot be named.
    own = OwnWords.usual();
    if (list) {
      return list();
    }
    if (forget != null) {
      return forget();
    }
    WrongUse.unless(
        word != null && soundsLike == null ^ phones == null,
        "expected a word and either what it sounds like or --phones");
    word = word.toLowerCase(Locale.ROOT);
    Home home = Home.of(option.protocol());
    Understanding understanding = Understanding.load(home);
    Teaching.Taught taught =
        new Teaching(own, home, understanding, model)
            .teach(word, phones == null ? " ~ " + soundsLike : "  " + phones, anyway);
    taught.problems().forEach(Console.err()::println);
    taught.lines().forEach(Console.out()::println);
    if (!taught.understood()) {
      return Tiptoe.COULD_NOT;
    }
    try (Engine engine =
        Engine.open(home, understanding, model, option.settings(), Console.err())) {
      return trial || from != null ? hear(engine) : 0;
    }
  }

  private int list() throws IOException {
    if (own.lines().isEmpty()) {
      Console.err().println("nothing was taught so far");
    }
    own.lines().forEach(Console.out()::println);
    return 0;
  }

  private int forget() throws IOException {
    if (own.forget(forget.toLowerCase(Locale.ROOT)) == 0) {
      throw new IOException("expected a word that was taught, found " + forget);
    }
    Console.out().println("forgot what was taught of " + forget);
    return 0;
  }

  private int hear(Engine engine) throws IOException {
    if (from == null) {
      Console.err().println("say a phrase with " + word);
    }
    try (Recogniser recogniser = engine.recogniser()) {
      TrialSentence sentence =
          TrialSentence.of(from, device, recogniser, chunk -> {}, Console.err());
      String text = sentence.text();
      Console.out().println("heard: " + (text.isEmpty() ? "nothing of the examination" : text));
      boolean found = List.of(text.split(" ")).contains(word);
      Console.out().println(word + (found ? " was heard" : " was not heard"));
      return found ? 0 : Tiptoe.COULD_NOT;
    }
  }
}
