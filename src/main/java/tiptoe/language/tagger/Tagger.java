package tiptoe.language.tagger;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.function.ToDoubleBiFunction;
import tiptoe.grammar.Parse;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.Tag;
import tiptoe.language.SecondReading;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * Reads sentences beyond the grammar: a model labels the words, the lay lexicon says what they
 * stand for, rules make statements of them.
 */
public final class Tagger implements SecondReading {
  private static final int LATELY = 8;
  static final long SEED = 7;
  private static final int PATHS_FOR_DENIALS = 20_000;
  private static final Likelihood LIKELIHOOD = Likelihood.shipped();
  private static final ToDoubleBiFunction<SecondReading.Claim, Set<String>> SHIPPED =
      (claim, features) -> LIKELIHOOD.of(features);
  private static final Likelihood.Limits LIMITS = Likelihood.Limits.shipped();

  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final SpanModel model;
  private final TalkModel talk;
  private final Set<String> deniable;
  private final WordItems items;
  private final ToldItems told;
  private final ToDoubleBiFunction<SecondReading.Claim, Set<String>> likelihood;

  /** Items of the sentences that were read last. */
  private final Map<List<String>, List<WordItem>> lately =
      Collections.synchronizedMap(
          new LinkedHashMap<>() {
            @Override
            protected boolean removeEldestEntry(Map.Entry<List<String>, List<WordItem>> eldest) {
              return size() > LATELY;
            }
          });

  Tagger(
      LayLexicon lexicon,
      ToldLexicon told,
      Protocol protocol,
      SpanModel model,
      TalkModel talk,
      Set<String> deniable) {
    this(lexicon, new ToldItems(told, lexicon), protocol, model, talk, deniable, SHIPPED);
  }

  private Tagger(
      LayLexicon lexicon,
      ToldItems told,
      Protocol protocol,
      SpanModel model,
      TalkModel talk,
      Set<String> deniable,
      ToDoubleBiFunction<SecondReading.Claim, Set<String>> likelihood) {
    this.lexicon = lexicon;
    this.told = told;
    this.protocol = protocol;
    this.model = model;
    this.talk = talk;
    this.deniable = Set.copyOf(deniable);
    this.items = new WordItems(lexicon);
    this.likelihood = likelihood;
  }

  /** The same that takes it from elsewhere how likely a claim with such features was meant. */
  Tagger weighing(ToDoubleBiFunction<SecondReading.Claim, Set<String>> by) {
    return new Tagger(lexicon, told, protocol, model, talk, deniable, by);
  }

  /**
   * Trains a tagger, which takes some seconds.
   *
   * @param network the grammars, for sentences to learn from and for what may be denied
   * @param typed how lexicon and grammars spell
   */
  public static Tagger train(PhraseNetwork network, Protocol protocol, TypedText typed)
      throws IOException {
    return train(
        network,
        protocol,
        typed,
        LayLexiconReader.shipped(protocol, typed::words),
        ToldLexicon.shipped(protocol, typed::words));
  }

  /** The same where the lexicons have been read. */
  static Tagger train(
      PhraseNetwork network,
      Protocol protocol,
      TypedText typed,
      LayLexicon lexicon,
      ToldLexicon told)
      throws IOException {
    // Beside one another, each on a thread of its own: the two depend on nothing of each other.
    CompletableFuture<TalkModel> talk =
        CompletableFuture.supplyAsync(
            () -> TalkModel.train(TalkModel.lines(typed::utterance), lexicon));
    List<Tagged> sentences = new TrainingSentences(lexicon, protocol, SEED).all(network);
    SpanModel model = SpanModel.train(sentences, lexicon);
    return new Tagger(lexicon, told, protocol, model, talk.join(), deniable(network));
  }

  /** {@code step value} of every abnormal value that some phrase of the grammars denies. */
  static Set<String> deniable(PhraseNetwork network) {
    Set<String> deniable = new TreeSet<>();
    for (PhraseNetwork.Path path : network.paths(new Random(SEED), PATHS_FOR_DENIALS)) {
      List<String> steps = new ArrayList<>();
      for (Parse.Item item : path.items()) {
        if (item instanceof Parse.TagItem tags) {
          for (Tag tag : Tag.parse(tags.text())) {
            if (tag.key().equals("step")) {
              steps.add(tag.value());
            } else if (tag.key().equals("deny")) {
              steps.forEach(step -> deniable.add(step + " " + tag.value()));
            }
          }
        }
      }
    }
    return deniable;
  }

  Set<String> deniable() {
    return deniable;
  }

  SpanModel model() {
    return model;
  }

  TalkModel talkModel() {
    return talk;
  }

  @Override
  public Reading read(List<String> words) {
    SentenceItems said = items(words);
    return new Account(said, unlisted(words), likelihood, LIMITS)
        .of(
            new SentenceReader(lexicon, words, said.items()),
            new ClaimReader(lexicon, protocol, deniable, words, said.items()));
  }

  @Override
  public double talk(List<String> words) {
    return talk.talk(words);
  }

  @Override
  public Parted parted(List<String> words) {
    return new Partings(lexicon, words, itemsOf(words)).parted();
  }

  @Override
  public Told told(List<String> words) {
    return new ToldReader(new ToldWords(told, protocol, words)).read();
  }

  @Override
  public List<String> headed(List<String> words) {
    return words.contains(TypedText.BREAK) ? new Headings(lexicon, words).joined() : words;
  }

  @Override
  public Optional<LeftOut> leftOut(List<String> words) {
    return new LeftOutReader(items(words), this::tells).read();
  }

  @Override
  public Set<Integer> asides(List<String> words) {
    return words.contains(TypedText.BREAK) ? new Asides(items(words)).words() : Set.of();
  }

  private SentenceItems items(List<String> words) {
    return new SentenceItems(lexicon, protocol, words, itemsOf(words));
  }

  // A sentence is read for what was left out, for what is found, and parted.
  private List<WordItem> itemsOf(List<String> words) {
    List<String> key = List.copyOf(words);
    List<WordItem> known = lately.get(key);
    if (known == null) {
      known = List.copyOf(items.of(words));
      lately.put(key, known);
    }
    return known;
  }

  // Facts that are no reason to leave something out, as that the baby feeds just now would be.
  private boolean tells(List<String> words) {
    return told(words).said().stream()
        .anyMatch(said -> !lexicon.isStepListed("state", said.subject()));
  }

  // Unlisted words that the model takes for something of the examination.
  private Set<Integer> unlisted(List<String> words) {
    List<Label> labels = model.labels(words);
    Set<Integer> labelled = new TreeSet<>();
    for (int at = 0; at < words.size(); at++) {
      if (labels.get(at) != null) {
        labelled.add(at);
      }
    }
    return labelled;
  }

  /** The runs of words with the same label. */
  static List<Span> spans(List<Label> labels) {
    List<Span> spans = new ArrayList<>();
    int from = 0;
    for (int at = 1; at <= labels.size(); at++) {
      if (at == labels.size() || labels.get(at) != labels.get(from)) {
        if (labels.get(from) != null) {
          spans.add(new Span(labels.get(from).id(), from, at));
        }
        from = at;
      }
    }
    return spans;
  }
}
