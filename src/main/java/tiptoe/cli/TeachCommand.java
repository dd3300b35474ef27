package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tiptoe.grammar.WordAutomaton;
import tiptoe.graph.AcousticModel;
import tiptoe.graph.ModelFolder;
import tiptoe.graph.Pronunciation;
import tiptoe.graph.Pronunciations;
import tiptoe.graph.SoundsAlike;
import tiptoe.session.Engine;
import tiptoe.session.Home;
import tiptoe.session.OwnWords;
import tiptoe.session.TrialSentence;
import tiptoe.session.Understanding;
import tiptoe.speech.Recogniser;

/** Teaches how a word is said here. */
@Command(
    name = "teach",
    mixinStandardHelpOptions = true,
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

  @Spec private CommandSpec spec;

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
    boolean one = soundsLike == null ^ phones == null;
    if (word == null || !one) {
      throw new ParameterException(
          spec.commandLine(), "expected a word and either what it sounds like or --phones");
    }
    word = word.toLowerCase(Locale.ROOT);
    Home home = Home.of(option.protocol());
    Understanding understanding = Understanding.load(home);
    if (!teach(home, understanding.network().automaton())) {
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
      Console.err().println("expected a word that was taught, found " + forget);
      return Tiptoe.COULD_NOT;
    }
    Console.out().println("forgot what was taught of " + forget);
    return 0;
  }

  private boolean teach(Home home, WordAutomaton phrases) throws IOException {
    if (phrases.states().stream()
        .noneMatch(state -> state.arcs().stream().anyMatch(arc -> arc.word().equals(word)))) {
      Console.err()
          .printf(
              "expected a word of the grammars, found %s; a wording that holds it must be added in"
                  + " %s first%n",
              word, home.grammars());
      return false;
    }
    AcousticModel acoustic =
        AcousticModel.read(
            ModelFolder.open(ModelFolder.locate(model, System.getenv(), home.folder())));
    Pronunciations before =
        Pronunciations.read(own.after(home.pronunciations()), acoustic.lexicon());
    String line = word + (phones == null ? " ~ " + soundsLike : "  " + phones);
    Pronunciations after = before.with("what was taught", List.of(line));
    if (!after.problems().isEmpty()) {
      after.problems().forEach(problem -> Console.err().println(problem));
      return false;
    }
    List<Pronunciation> taught =
        after.of(word).stream().filter(one -> !before.of(word).contains(one)).toList();
    if (taught.isEmpty()) {
      Console.out().println(word + " is understood when said so already");
      return true;
    }
    if (!taught.stream().allMatch(acoustic::canSay)) {
      Console.err()
          .println("expected phones that the speech model has together, found " + shown(taught));
      return false;
    }
    if (!distinct(phrases, before, taught)) {
      return false;
    }
    own.add(line);
    Console.out().println(word + " is understood when said " + shown(taught) + " from now on");
    return true;
  }

  /** Tells words that sound much the same; false where one cannot be told apart at all. */
  private boolean distinct(
      WordAutomaton phrases, Pronunciations before, List<Pronunciation> taught) {
    boolean distinct = true;
    for (Pronunciation sound : taught) {
      for (SoundsAlike.Alike alike : SoundsAlike.find(phrases, before::of, word, sound)) {
        boolean same = alike.distance() == 0;
        Console.err()
            .printf(
                "%s sounds %s %s (%s)%s%n",
                word,
                same ? "the same as" : "nearly like",
                alike.word(),
                alike.sound(),
                alike.samePlace() ? ", which can be said in its place" : "");
        distinct &= !same || !alike.samePlace();
      }
    }
    if (!distinct && !anyway) {
      Console.err().println("not taught; --anyway teaches it all the same");
    }
    return distinct || anyway;
  }

  private static String shown(List<Pronunciation> sounds) {
    return sounds.stream().map(Pronunciation::toString).collect(Collectors.joining(" or "));
  }

  private int hear(Engine engine) throws IOException {
    if (from == null) {
      Console.err().println("say a phrase with " + word);
    }
    try (Recogniser recogniser = engine.recogniser()) {
      TrialSentence sentence =
          from == null
              ? TrialSentence.spoken(device, recogniser, chunk -> {}, Console.err())
              : TrialSentence.from(from, recogniser);
      String text = sentence.text();
      Console.out().println("heard: " + (text.isEmpty() ? "nothing of the examination" : text));
      boolean found = List.of(text.split(" ")).contains(word);
      Console.out().println(word + (found ? " was heard" : " was not heard"));
      return found ? 0 : Tiptoe.COULD_NOT;
    }
  }
}
