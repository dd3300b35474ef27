package tiptoe.language;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.grammar.Parse;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Finds out what an utterance means: its phrases by the grammars, their meaning by their tags. */
public final class Interpreter {
  private static final Set<String> DENIED_BEFORE =
      Set.of(
          "no",
          "nothing",
          "or",
          "not",
          "without",
          "never",
          "neither",
          "denies",
          "nor",
          "isn't",
          "wasn't",
          "don't",
          "doesn't",
          "can't",
          "cannot",
          "nil",
          "negative",
          "zero");
  private static final Set<String> DENIED_BEHIND =
      Set.of("not", "absent", "none", "nil", "never", "excluded", "isn't", "wasn't");

  private static final Set<String> JOINTS = Set.of("and", "but", "so", "then", "also");
  private static final String ALL_ACCOUNTED = "every word accounted for";
  private static final String NONE_CAN_CHANGE = "no word left open can change it";
  private static final String BY_ITSELF = "said by itself";
  private static final String NOT_ASSESSABLE = "not-assessable";
  private static final Set<String> COPULAS = Set.of("is", "are", "was", "were");

  private static final Set<Command> ONLY_ALONE =
      EnumSet.of(Command.YES, Command.NO, Command.STRIKE);

  private final PhraseNetwork network;
  private final Protocol protocol;
  private final SecondReading second;
  private final TalkLimits limits = TalkLimits.shipped();

  /** Understands what the grammars cover and nothing else. */
  public Interpreter(PhraseNetwork network, Protocol protocol) {
    this(network, protocol, SecondReading.NONE);
  }

  /**
   * @param second reads utterances that the grammars do not cover as a whole
   */
  public Interpreter(PhraseNetwork network, Protocol protocol, SecondReading second) {
    this.network = network;
    this.protocol = protocol;
    this.second = second;
  }

  /** The phrases that it knows. */
  public PhraseNetwork phrases() {
    return network;
  }

  /**
   * What the words mean in this dialogue.
   *
   * @param spoken lower case, spelled as in the grammars; see {@link TypedText} for anything else
   * @param source {@link Source#GRAMMAR} for speech, {@link Source#TYPED} for the keyboard
   */
  public Interpretation interpret(List<String> spoken, Dialogue dialogue, Source source) {
    List<String> words = spoken.stream().map(ScotsNegation::plain).toList();
    return mended(UnsayableWord.mended(words), dialogue, source);
  }

  private Interpretation mended(List<String> spoken, Dialogue dialogue, Source source) {
    List<String> words = second.headed(spoken);
    Interpretation read = inOneBreath(words, dialogue, source);
    Interpretation weighed = weighed(read, words, dialogue);
    Set<Integer> aside = isPhrase(read) ? Set.of() : second.asides(spoken);
    return aside.isEmpty() ? weighed : withoutAsides(weighed, spoken, aside, dialogue, source);
  }

  private Interpretation weighed(Interpretation read, List<String> words, Dialogue before) {
    boolean says = !read.meanings().isEmpty() || read.withheld();
    return isPhrase(read) || !says ? read : limits.weigh(read, second.talk(words), before);
  }

  // "Both red reflexes, dad could you knock that light off, thank you": what is said to others
  // takes nothing from what is found, nor does it make talk of it unless all sounds so.
  private Interpretation withoutAsides(
      Interpretation whole,
      List<String> spoken,
      Set<Integer> aside,
      Dialogue dialogue,
      Source source) {
    LessAsides less = new LessAsides(spoken, aside);
    double talk = second.talk(spoken);
    Interpretation read =
        limits.weigh(
            read(second.headed(less.words()), dialogue, source),
            limits.silences(talk) ? talk : Math.min(talk, second.talk(less.words())),
            dialogue);
    if (read.meanings().stream().anyMatch(Meaning.Instruction.class::isInstance)) {
      return whole;
    }
    return new Interpretation(
        read.meanings(),
        read.uncovered(),
        less.among(read.spans()),
        read.withheld(),
        read.dialogue(),
        read.certainties(),
        read.talk());
  }

  private static boolean isPhrase(Interpretation read) {
    return read.uncovered().isEmpty() && read.certainties().isEmpty();
  }

  private Interpretation inOneBreath(List<String> words, Dialogue dialogue, Source source) {
    Interpretation unparted = read(words, dialogue, source);
    if (isPhrase(unparted) || words.contains(TypedText.BREAK) || words.contains(TypedText.ASKS)) {
      return unparted;
    }
    SecondReading.Parted parted = second.parted(words);
    if (parted.words().equals(words)) {
      return unparted;
    }
    Interpretation read = read(parted.words(), dialogue, source);
    // What is told of the baby may stand beside other people and things, what is found may not.
    boolean facts =
        !read.meanings().isEmpty()
            && read.meanings().stream().allMatch(Meaning.Fact.class::isInstance);
    return parted.talk() && !facts
        ? unparted
        : new InOneBreath(protocol, unparted, read, parted.unfamiliar()).reading();
  }

  private Interpretation read(List<String> words, Dialogue dialogue, Source source) {
    List<String> plain = TypedText.plain(words);
    Optional<Interpretation> amended =
        words.contains(TypedText.ASKS) ? Optional.empty() : amended(plain, dialogue, source);
    if (amended.isPresent()) {
      return amended.get();
    }
    ByGrammar first = byGrammar(plain, dialogue, source);
    if (!first.loose().isEmpty()) {
      Optional<Interpretation> number = numberAlone(plain, dialogue, source);
      if (number.isPresent()) {
        return number.get();
      }
      Optional<Interpretation> odd = withUnsayableNumber(plain, dialogue, source);
      if (odd.isPresent()) {
        return odd.get();
      }
      Optional<Interpretation> born = born(words, dialogue, source);
      if (born.isPresent()) {
        return born.get();
      }
    }
    Optional<Interpretation> leftOut =
        first.loose().isEmpty() || words.contains(TypedText.ASKS)
            ? Optional.empty()
            : second.leftOut(words).flatMap(left -> leftOut(left, dialogue, source));
    if (leftOut.isPresent()) {
      return leftOut.get();
    }
    Optional<Interpretation> told =
        first.loose().isEmpty() ? Optional.empty() : told(words, first, dialogue, source);
    return told.orElseGet(() -> found(words, first, dialogue, source));
  }

  // A number that is asked for may be said without its name: "one forty".
  private Optional<Interpretation> numberAlone(
      List<String> plain, Dialogue dialogue, Source source) {
    Question open = dialogue.open();
    if (open == null || dialogue.overtaken() || open.kind() != Question.Kind.NUMBER) {
      return Optional.empty();
    }
    String subject = open.about() == null ? open.detail() : open.about().step();
    boolean number =
        IntStream.rangeClosed(1, plain.size())
            .anyMatch(to -> !NumberWords.readings(plain.subList(0, to)).isEmpty());
    if (!number) {
      return Optional.empty();
    }
    List<String> words = new ArrayList<>(List.of(subject.split("-")));
    words.addAll(plain);
    ByGrammar named = byGrammar(words, dialogue, source);
    boolean states =
        named.loose().isEmpty()
            && !named.utterance().meanings().isEmpty()
            && named.utterance().meanings().stream()
                .allMatch(
                    meaning ->
                        meaning instanceof Meaning.Answers || subject.equals(subject(meaning)));
    return states ? Optional.of(named.interpretation(words)) : Optional.empty();
  }

  /** What is found in a sentence that the grammars do not cover. */
  private Interpretation found(
      List<String> words, ByGrammar first, Dialogue dialogue, Source source) {
    List<String> plain = TypedText.plain(words);
    boolean parted = words.contains(TypedText.BREAK);
    boolean asked = words.contains(TypedText.ASKS) && first.states();
    if (second == SecondReading.NONE
        || first.loose().isEmpty() && !parted && !asked && !first.asksWhere()) {
      return first.interpretation(plain);
    }
    Optional<Interpretation> beside =
        parted && !first.loose().isEmpty() ? beside(words, dialogue, source) : Optional.empty();
    if (beside.isPresent()) {
      return beside.get();
    }
    SecondReading.Reading reading = second.read(words);
    if (first.loose().isEmpty()) {
      // "Reduced left, clear right": phrases know nothing of what parts them.
      boolean agrees =
          first.leavesOut()
              || reading.claims().stream().noneMatch(claim -> first.denies(claim, protocol));
      boolean complete =
          reading.unaccounted().isEmpty()
              && !reading.claims().isEmpty()
              && (parted || reading.claims().stream().allMatch(this::isPlaced));
      if (agrees && !(complete && first.asksWhere()) && !(asked && reading.doubtful())) {
        return first.interpretation(plain);
      }
      IntStream.range(0, plain.size()).forEach(first.loose()::add);
    } else {
      ByGrammar bare = byGrammar(without(plain, reading.fillers()), dialogue, source);
      boolean agrees =
          reading.claims().stream().allMatch(claim -> bare.states(claim, protocol))
              && !bare.utterance().meanings().isEmpty();
      boolean counts = !reading.doubtful() || bare.leavesOut();
      if (bare.loose().isEmpty() && agrees && counts) {
        return new Interpretation(
            bare.utterance().meanings(),
            List.of(),
            reading.spans(),
            false,
            bare.utterance().dialogue());
      }
    }
    return wordByWord(plain, first, reading, source);
  }

  // What was only heard is read back, however plain it is.
  private static Optional<Interpretation> born(
      List<String> words, Dialogue dialogue, Source source) {
    return Optional.ofNullable(dialogue.clock())
        .flatMap(clock -> BirthTime.of(words, ZonedDateTime.now(clock)))
        .map(
            birth ->
                new Meaning.Fact(
                    "born-at",
                    birth.moment().toString(),
                    false,
                    birth.doubtful() || source != Source.TYPED))
        .map(fact -> new Interpretation(List.of(fact), List.of(), dialogue));
  }

  // "Mum was positive for group B strep, he's lovely and pink": what is told is read by itself,
  // the rest as if it stood alone.
  private Optional<Interpretation> told(
      List<String> words, ByGrammar first, Dialogue dialogue, Source source) {
    SecondReading.Told told = second.told(words);
    if (told.said().isEmpty()) {
      return told.contested().isEmpty()
          ? Optional.empty()
          : Optional.of(without(found(words, first, dialogue, source), told.contested()));
    }
    List<Interpretation.Certainty> certainties = new ArrayList<>();
    String why = "not accounted for: " + String.join(" ", told.open());
    for (SecondReading.Told.Said said : told.said()) {
      meanings(said, first, source)
          .forEach(
              one ->
                  certainties.add(
                      new Interpretation.Certainty(
                          one, said.sure(), said.sure() ? BY_ITSELF : why)));
    }
    List<String> uncovered = new ArrayList<>(told.open());
    List<SecondReading.Span> spans = List.of();
    Dialogue next = dialogue;
    if (!told.rest().isEmpty()) {
      Interpretation rest =
          told.shared()
              ? found(
                  told.rest(),
                  byGrammar(TypedText.plain(told.rest()), dialogue, source),
                  dialogue,
                  source)
              : read(told.rest(), dialogue, source);
      Interpretation left = without(rest, told.contested());
      left.howSure().stream()
          .filter(one -> !(one.meaning() instanceof Meaning.Instruction))
          .filter(one -> !(one.meaning() instanceof Meaning.Picks))
          .forEach(certainties::add);
      uncovered.addAll(left.uncovered());
      spans = left.spans();
      next = left.dialogue();
    }
    return Optional.of(
        new Interpretation(
            certainties.stream().map(Interpretation.Certainty::meaning).toList(),
            uncovered,
            spans,
            false,
            next,
            certainties));
  }

  // Of what two values were told, neither counts.
  private static Interpretation without(Interpretation read, Set<String> contested) {
    List<Interpretation.Certainty> left =
        read.howSure().stream().filter(one -> !contested.contains(subject(one.meaning()))).toList();
    boolean less = left.size() < read.howSure().size();
    return new Interpretation(
        left.stream().map(Interpretation.Certainty::meaning).toList(),
        read.uncovered().isEmpty() && less ? List.of("two values") : read.uncovered(),
        read.spans(),
        read.withheld() || less && left.isEmpty(),
        read.dialogue(),
        left);
  }

  private static String subject(Meaning meaning) {
    return meaning instanceof Meaning.States said
        ? said.statement().step()
        : meaning instanceof Meaning.Fact fact ? fact.id() : "";
  }

  private List<Meaning> meanings(SecondReading.Told.Said said, ByGrammar first, Source source) {
    if (protocol.fact(said.subject()).isPresent()) {
      return List.of(
          new FactReader(protocol)
              .read(new Meaning.Fact(said.subject(), said.value()), said.numbers(), false));
    }
    SecondReading.Claim claim =
        new SecondReading.Claim(said.subject(), null, null, List.of(), said.numbers(), Set.of());
    return new SecondOpinion(protocol, SecondReading.NONE.read(List.of()), Set.of())
        .alone(claim, first.utterance().meanings(), source);
  }

  // "Birth weight three four fifty, he's lovely and pink": what is between breaks and no finding,
  // but a fact or what was left out, is read by itself.
  private Optional<Interpretation> beside(List<String> words, Dialogue dialogue, Source source) {
    if (words.contains(TypedText.ASKS)) {
      return Optional.empty();
    }
    List<String> rest = new ArrayList<>();
    List<Meaning> told = new ArrayList<>();
    for (List<String> chunk : chunks(words)) {
      ByGrammar alone = byGrammar(withoutJoint(chunk), dialogue, source);
      if (alone.loose().isEmpty() && alone.tellsBeside()) {
        told.addAll(alone.utterance().meanings());
      } else {
        rest.addAll(rest.isEmpty() ? List.of() : List.of(TypedText.BREAK));
        rest.addAll(chunk);
      }
    }
    if (told.isEmpty() || rest.isEmpty() || second.read(rest).doubtful()) {
      return Optional.empty();
    }
    Interpretation left = read(rest, dialogue, source);
    List<Interpretation.Certainty> certainties = new ArrayList<>();
    told.forEach(one -> certainties.add(new Interpretation.Certainty(one, true, BY_ITSELF)));
    certainties.addAll(left.howSure());
    List<Meaning> meanings = new ArrayList<>(told);
    meanings.addAll(left.meanings());
    return Optional.of(
        new Interpretation(
            meanings, left.uncovered(), left.spans(), false, left.dialogue(), certainties));
  }

  // "Not done barlow or ortolani either side, she's crying": nothing is found by it, of why only
  // what is not normal, and what else is said is read by itself.
  private Optional<Interpretation> leftOut(
      SecondReading.LeftOut left, Dialogue dialogue, Source source) {
    Interpretation why = other(left.reason(), dialogue, source);
    Interpretation rest = other(left.rest(), dialogue, source);
    List<Finding> out = new ArrayList<>();
    for (SecondReading.Omitted omitted : left.omitted()) {
      List<Finding> one = notExamined(omitted, left, rest.statements(), source);
      if (one.isEmpty()) {
        return Optional.empty();
      }
      out.addAll(one);
    }
    List<Interpretation.Certainty> certainties = new ArrayList<>();
    for (Finding finding : out) {
      Meaning meaning = new Meaning.States(finding, false);
      certainties.add(new Interpretation.Certainty(meaning, true, BY_ITSELF));
    }
    why.howSure().stream()
        .filter(one -> isAbnormal(one.meaning()) && !leavesOut(one.meaning()))
        .forEach(certainties::add);
    rest.howSure().stream()
        .filter(one -> !(one.meaning() instanceof Meaning.Instruction))
        .forEach(certainties::add);
    List<Meaning> meanings = certainties.stream().map(Interpretation.Certainty::meaning).toList();
    boolean found =
        findings(meanings.subList(out.size(), meanings.size()))
            .anyMatch(other -> out.stream().anyMatch(one -> isFound(one, other)));
    List<String> open = new ArrayList<>();
    if (certainties.stream().anyMatch(one -> !one.sure())) {
      open.addAll(why.uncovered());
      open.addAll(rest.uncovered());
    }
    return found
        ? Optional.empty()
        : Optional.of(new Interpretation(meanings, open, List.of(), false, dialogue, certainties));
  }

  private Interpretation other(List<String> words, Dialogue dialogue, Source source) {
    return words.isEmpty()
        ? new Interpretation(List.of(), List.of(), dialogue)
        : interpret(words, dialogue, source);
  }

  private static Stream<Finding> findings(List<Meaning> meanings) {
    return meanings.stream()
        .filter(Meaning.States.class::isInstance)
        .map(meaning -> ((Meaning.States) meaning).statement());
  }

  private boolean isAbnormal(Meaning meaning) {
    return findings(List.of(meaning))
        .anyMatch(one -> one.value() != null && !protocol.step(one.step()).isNormal(one.value()));
  }

  private static boolean leavesOut(Meaning meaning) {
    return findings(List.of(meaning)).anyMatch(one -> Value.NOT_EXAMINED.equals(one.value()));
  }

  private static boolean isFound(Finding out, Finding other) {
    return out.step().equals(other.step())
        && !Objects.equals(out.value(), other.value())
        && (out.side() == null || other.side() == null || out.side() == other.side());
  }

  private List<Finding> notExamined(
      SecondReading.Omitted omitted,
      SecondReading.LeftOut left,
      List<Finding> rest,
      Source source) {
    // "Left femoral strong, right one not done": the same as of the other side.
    Set<String> steps = new TreeSet<>(omitted.steps());
    if (steps.size() > 1) {
      steps.retainAll(rest.stream().map(Finding::step).toList());
    }
    Optional<Step> step = steps.stream().findFirst().map(protocol::step);
    boolean judged = left.unable() && step.flatMap(one -> one.value(NOT_ASSESSABLE)).isPresent();
    if (!omitted.words().isEmpty() && !judged) {
      List<String> phrase = new ArrayList<>(omitted.words());
      phrase.addAll(List.of("not", "done"));
      if (left.side() != null) {
        phrase.addAll(List.of("on", "the", left.side().id()));
      }
      ByGrammar read = byGrammar(phrase, Dialogue.START, source);
      if (read.loose().isEmpty() && read.tellsBeside() && read.leavesOut()) {
        return findings(read.utterance().meanings()).toList();
      }
    }
    if (steps.size() != 1) {
      return List.of();
    }
    String value = judged ? NOT_ASSESSABLE : Value.NOT_EXAMINED;
    return !step.get().sided()
        ? List.of(Finding.of(step.get().id(), null, value))
        : Stream.of(Side.values())
            .filter(side -> left.side() == null || side == left.side())
            .map(side -> Finding.of(step.get().id(), side, value))
            .toList();
  }

  private static List<List<String>> chunks(List<String> words) {
    List<List<String>> chunks = new ArrayList<>();
    int from = 0;
    for (int at = 0; at <= words.size(); at++) {
      if (at == words.size() || words.get(at).equals(TypedText.BREAK)) {
        chunks.add(words.subList(from, at));
        from = at + 1;
      }
    }
    return chunks;
  }

  private static List<String> withoutJoint(List<String> chunk) {
    boolean joined = chunk.size() > 1 && JOINTS.contains(chunk.get(0));
    return joined ? chunk.subList(1, chunk.size()) : chunk;
  }

  // "No hernias": the words tell both sides where the phrase leaves it open.
  private boolean isPlaced(SecondReading.Claim claim) {
    return claim.side() != null || !protocol.step(claim.step()).sided();
  }

  private Optional<Interpretation> withUnsayableNumber(
      List<String> words, Dialogue dialogue, Source source) {
    for (UnsayableNumber number : UnsayableNumber.in(words)) {
      ByGrammar read = byGrammar(number.words(), dialogue, source);
      Optional<List<Meaning>> said =
          read.loose().isEmpty()
              ? number.said(read.utterance().meanings(), protocol)
              : Optional.empty();
      if (said.isPresent()) {
        List<Interpretation.Certainty> certainties =
            said.get().stream()
                .filter(Meaning.States.class::isInstance)
                .map(
                    one ->
                        read.utterance().meanings().contains(one)
                            ? new Interpretation.Certainty(one, true, "words of the phrases")
                            : new Interpretation.Certainty(
                                one, false, "the number is seldom right"))
                .toList();
        Dialogue next = new Dialogue(read.utterance().dialogue().region(), List.of(), null);
        return Optional.of(
            new Interpretation(said.get(), List.of(), List.of(), false, next, certainties));
      }
    }
    return Optional.empty();
  }

  private Interpretation wordByWord(
      List<String> words, ByGrammar first, SecondReading.Reading reading, Source source) {
    List<Meaning> said = first.utterance().meanings();
    SecondOpinion opinion = new SecondOpinion(protocol, reading, first.loose());
    Set<Integer> open = new TreeSet<>(reading.unaccounted());
    open.removeAll(told(words, reading));
    reading.weighed().stream()
        .filter(one -> one.verdict() == SecondReading.Verdict.UNLIKELY)
        .forEach(one -> open.addAll(one.claim().evidence()));
    Set<Integer> left = open.isEmpty() ? first.loose() : open;
    List<String> uncovered = left.stream().map(words::get).toList();
    boolean complete = !reading.doubtful() && open.isEmpty() && !reading.weighed().isEmpty();
    List<Interpretation.Certainty> certainties = new ArrayList<>();
    List<Meaning> sure = new ArrayList<>();
    for (SecondReading.Weighed weighed : reading.weighed()) {
      SecondReading.Claim claim = weighed.claim();
      boolean byWords =
          weighed.verdict() != SecondReading.Verdict.UNLIKELY
              && weighed.scope().stream().noneMatch(open::contains);
      boolean counts = byWords || weighed.verdict() == SecondReading.Verdict.LIKELY;
      if (counts && !reading.doubtful() && (complete || !opinion.isContradicted(claim, said))) {
        String why =
            complete ? ALL_ACCOUNTED : byWords ? NONE_CAN_CHANGE : likely(weighed.likelihood());
        for (Meaning meaning : opinion.alone(claim, said, source)) {
          sure.add(meaning);
          certainties.add(new Interpretation.Certainty(meaning, true, why));
        }
      }
    }
    if (complete) {
      return new Interpretation(
          sure, List.of(), reading.spans(), false, first.utterance().dialogue(), certainties);
    }
    List<Meaning> offered =
        opinion.beside(said).stream()
            .filter(meaning -> meaning instanceof Meaning.States)
            .filter(meaning -> isNoneOf(meaning, sure))
            .toList();
    String why = "not accounted for: " + String.join(" ", uncovered);
    offered.forEach(meaning -> certainties.add(new Interpretation.Certainty(meaning, false, why)));
    boolean withheld =
        offered.isEmpty()
            && sure.isEmpty()
            && said.stream().anyMatch(Meaning.States.class::isInstance);
    List<Meaning> meanings = new ArrayList<>(sure);
    meanings.addAll(offered);
    return new Interpretation(
        meanings, uncovered, reading.spans(), withheld, first.utterance().dialogue(), certainties);
  }

  private static String likely(double likelihood) {
    return String.format(Locale.ROOT, "likely meant so: %.3f", likelihood);
  }

  private boolean isNoneOf(Meaning offered, List<Meaning> sure) {
    Finding finding = ((Meaning.States) offered).statement();
    return sure.stream()
        .filter(Meaning.States.class::isInstance)
        .map(meaning -> ((Meaning.States) meaning).statement())
        .noneMatch(
            one ->
                one.step().equals(finding.step())
                    && (one.side() == finding.side()
                        || one.side() == null
                        || finding.side() == null)
                    && Objects.equals(one.value(), finding.value()));
  }

  // Only behind what was understood in full: the words before it are else read together with it.
  private Optional<Interpretation> amended(List<String> words, Dialogue dialogue, Source source) {
    Optional<SideAmendment> amendment = SideAmendment.of(words);
    if (amendment.isEmpty()) {
      return Optional.empty();
    }
    UtteranceInterpreter utterance = new UtteranceInterpreter(protocol, dialogue, source);
    List<String> before = words.subList(0, amendment.get().from());
    if (!before.isEmpty()) {
      ByGrammar said = byGrammar(before, dialogue, source);
      if (!said.loose().isEmpty()) {
        return Optional.empty();
      }
      utterance = said.utterance();
    }
    return utterance.amend(amendment.get().side(), amendment.get().outright())
        ? Optional.of(new Interpretation(utterance.meanings(), List.of(), utterance.dialogue()))
        : Optional.empty();
  }

  /** What the grammars make of the words; loose are the indexes of those that no phrase covers. */
  private record ByGrammar(UtteranceInterpreter utterance, Set<Integer> loose) {
    Interpretation interpretation(List<String> words) {
      List<Interpretation.Certainty> certainties =
          utterance.assumption() == null
              ? List.of()
              : utterance.meanings().stream()
                  .map(one -> new Interpretation.Certainty(one, false, utterance.assumption()))
                  .toList();
      return new Interpretation(
          utterance.meanings(),
          loose.stream().map(words::get).toList(),
          List.of(),
          false,
          utterance.dialogue(),
          certainties);
    }

    /** Whether they say of steps that these were not examined, and nothing else. */
    boolean leavesOut() {
      return utterance.meanings().stream()
          .allMatch(
              meaning ->
                  meaning instanceof Meaning.States said
                      && Value.NOT_EXAMINED.equals(said.statement().value()));
    }

    /** Whether they tell facts about the baby, or what was not examined, and nothing else. */
    boolean tellsBeside() {
      List<Meaning> said = utterance.meanings();
      return !said.isEmpty()
          && (leavesOut() || said.stream().allMatch(Meaning.Fact.class::isInstance));
    }

    /** Whether they leave open of what, or of which side, something is said. */
    boolean asksWhere() {
      return utterance.meanings().stream()
          .filter(Meaning.Asks.class::isInstance)
          .map(meaning -> ((Meaning.Asks) meaning).question().kind())
          .anyMatch(kind -> kind == Question.Kind.SIDE || kind == Question.Kind.STEP);
    }

    boolean states() {
      return utterance.meanings().stream().anyMatch(Meaning.States.class::isInstance);
    }

    /** Whether they state something else of the same step and side. */
    boolean denies(SecondReading.Claim claim, Protocol protocol) {
      boolean sided = protocol.step(claim.step()).sided();
      return claim.value() != null
          && !states(claim, protocol)
          && utterance.meanings().stream()
              .filter(Meaning.States.class::isInstance)
              .map(meaning -> ((Meaning.States) meaning).statement())
              .anyMatch(
                  finding ->
                      finding.step().equals(claim.step())
                          && (!sided || claim.side() == null || finding.side() == claim.side()));
    }

    boolean states(SecondReading.Claim claim, Protocol protocol) {
      return utterance.meanings().stream()
          .filter(Meaning.States.class::isInstance)
          .map(meaning -> ((Meaning.States) meaning).statement())
          .anyMatch(
              finding ->
                  finding.step().equals(claim.step())
                      && (!protocol.step(claim.step()).sided() || finding.side() == claim.side())
                      && Objects.equals(finding.value(), claim.value()));
    }
  }

  // "Sorry, left clavicle intact": before something else the side belongs to that.
  private Parse parse(List<String> words) {
    Parse parse = network.parse(words);
    return parse.phrases().stream()
        .filter(phrase -> phrase.to() < words.size())
        .filter(phrase -> SideAmendment.of(words.subList(phrase.from(), phrase.to())).isPresent())
        .findFirst()
        .map(
            phrase -> {
              List<String> less = new ArrayList<>(words);
              less.set(phrase.from(), "");
              return parse(less);
            })
        .orElse(parse);
  }

  private ByGrammar byGrammar(List<String> words, Dialogue dialogue, Source source) {
    Parse parse = parse(words);
    UtteranceInterpreter utterance = new UtteranceInterpreter(protocol, dialogue, source);
    Set<Integer> loose = new TreeSet<>();
    List<String> left = leftOver(parse, words);
    for (Parse.Phrase phrase : parse.phrases()) {
      List<Clause> clauses = Clause.of(phrase, words);
      if (isStray(phrase, clauses, words.size(), utterance.isAsking()) || isDenied(phrase, left)) {
        IntStream.range(phrase.from(), phrase.to()).forEach(loose::add);
      } else {
        int before = utterance.meanings().size();
        utterance.take(clauses);
        if (isReply(clauses)
            && isPart(phrase, words.size())
            && utterance.meanings().size() == before) {
          // It answers nothing that is asked: what was said before it is not told in full.
          IntStream.range(phrase.from(), phrase.to()).forEach(loose::add);
        }
      }
    }
    parse.uncovered().forEach(span -> IntStream.range(span.from(), span.to()).forEach(loose::add));
    return new ByGrammar(utterance, loose);
  }

  // Words of phrases that say no more than the reading does, but in more detail.
  private Set<Integer> told(List<String> words, SecondReading.Reading reading) {
    Set<Integer> told = new TreeSet<>();
    for (Parse.Phrase phrase : parse(words).phrases()) {
      UtteranceInterpreter alone =
          new UtteranceInterpreter(protocol, Dialogue.START, Source.GRAMMAR);
      alone.take(Clause.of(phrase, words));
      boolean states = alone.meanings().stream().anyMatch(Meaning.States.class::isInstance);
      boolean agrees =
          alone.meanings().stream()
              .filter(Meaning.States.class::isInstance)
              .map(meaning -> ((Meaning.States) meaning).statement())
              .allMatch(
                  finding ->
                      finding.value() != null
                          && reading.claims().stream()
                              .anyMatch(
                                  claim ->
                                      claim.step().equals(finding.step())
                                          && finding.value().equals(claim.value())));
      if (states && agrees) {
        IntStream.range(phrase.from(), phrase.to()).forEach(told::add);
      }
    }
    return told;
  }

  private static List<String> without(List<String> words, Set<Integer> fillers) {
    return IntStream.range(0, words.size())
        .filter(at -> !fillers.contains(at))
        .mapToObj(words::get)
        .toList();
  }

  // "No sign at all of milk spots" where only "milk spots" is a phrase, or "hernia absent": taking
  // the phrase without the words beside it would record the opposite of what was said.
  private static boolean isDenied(Parse.Phrase phrase, List<String> left) {
    int before = phrase.from() - 1;
    while (before >= 0
        && !left.get(before).isEmpty()
        && !DENIED_BEFORE.contains(left.get(before))) {
      before--;
    }
    int behind = phrase.to();
    if (behind < left.size() && COPULAS.contains(left.get(behind))) {
      behind++;
    }
    return before >= 0 && !left.get(before).isEmpty()
        || behind < left.size() && DENIED_BEHIND.contains(left.get(behind));
  }

  // The words with those of the phrases blanked; a bare "no" is left to what follows it.
  private static List<String> leftOver(Parse parse, List<String> words) {
    List<String> left = new ArrayList<>(words);
    for (Parse.Phrase phrase : parse.phrases()) {
      boolean bareNo = phrase.to() - phrase.from() == 1 && words.get(phrase.from()).equals("no");
      if (!bareNo) {
        left.subList(phrase.from(), phrase.to()).replaceAll(word -> "");
      }
    }
    return left;
  }

  // A bare "no" or "right" before something else is not an answer: it most likely belongs to what
  // follows, and taking the two apart would record the opposite of what was said. Nor is a bare "on
  // the left" behind something that asks nothing: it belongs to what came before. "Hang on" and
  // "scratch that" beside a finding are part of the sentence.
  private static boolean isStray(
      Parse.Phrase phrase, List<Clause> clauses, int length, boolean asking) {
    boolean onlyAlone =
        clauses.stream()
            .flatMap(clause -> clause.mark("command").stream())
            .map(Command::of)
            .anyMatch(ONLY_ALONE::contains);
    boolean doubtful = clauses.stream().anyMatch(clause -> clause.mark("ask").isPresent());
    boolean reply =
        isReply(clauses) || clauses.stream().anyMatch(clause -> clause.mark("pick").isPresent());
    return isPart(phrase, length)
        && (onlyAlone || doubtful || reply && (phrase.to() != length || !asking));
  }

  private static boolean isReply(List<Clause> clauses) {
    return clauses.stream().anyMatch(clause -> clause.mark("reply").isPresent());
  }

  private static boolean isPart(Parse.Phrase phrase, int length) {
    return phrase.from() > 0 || phrase.to() < length;
  }
}
