package tiptoe.exam;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;

/**
 * An examination that goes on: takes in what is heard, decides what it does to the record, and is
 * the only one that writes events. An event counts, and is shown, only once the sink has kept it;
 * when that fails with {@link NotRecorded} the record stays as it was.
 */
public final class Examination {
  /** A spoken "yes" that comes later answers nothing, in seconds. */
  private static final double LONGEST_WAIT = 10;

  /** So long one more finding takes to be read, or to be heard, in seconds. */
  private static final double READING = 3;

  /** A clock that is set back by less is taken to be kept right by the network. */
  private static final Duration NOTABLE = Duration.ofSeconds(1);

  private static final Pattern AMENDS =
      Pattern.compile(
          "(no|not|oh|sorry|actually|wrong|i mean|i meant)\\b.* (left|right|side|one)\\b.*");

  private static final Set<Question.Kind> YES_OR_NO =
      EnumSet.of(Question.Kind.CONTRADICTION, Question.Kind.COMMAND, Question.Kind.FACT);

  private final Clock clock;
  private final EventSink sink;
  private final QuestionText words;
  private final Fold fold;
  private volatile ExamRecord record;
  private volatile double spokeUntil;
  private Dialogue dialogue;

  private Examination(Clock clock, EventSink sink, QuestionText words, ExamRecord record) {
    this.clock = clock;
    this.sink = sink;
    this.words = words;
    this.record = record;
    fold = new Fold(record);
    dialogue = new Dialogue(record.region(), List.of(), null);
  }

  /**
   * Opens a new examination.
   *
   * @param words puts the questions it asks into words
   */
  public static Examination open(
      Protocol protocol,
      Clock clock,
      EventSink sink,
      QuestionText words,
      Event.ExaminationOpened opening) {
    Examination made = new Examination(clock, sink, words, ExamRecord.empty(protocol));
    made.append(opening);
    return made;
  }

  /** Takes up an examination, to review it or to go on, from what was kept of it. */
  public static Examination of(ExamRecord record, Clock clock, EventSink sink, QuestionText words) {
    return new Examination(clock, sink, words, record);
  }

  public ExamRecord record() {
    return record;
  }

  /** What the next utterance is to be understood with. */
  public Dialogue dialogue() {
    Optional<Asked> open = record.openQuestion().filter(asked -> asked.question().about() != null);
    return dialogue
        .asking(
            open.map(Asked::question).orElse(null),
            open.filter(this::isOvertaken).isPresent(),
            record.toConfirm().isPresent())
        .at(clock);
  }

  private boolean isOvertaken(Asked asked) {
    return asked.utterance() != null
        && record.statements().stream()
            .anyMatch(said -> said.utterance() != null && said.utterance() > asked.utterance());
  }

  /** The tool spoke up to this second of the sound: no answer could be heard before. */
  public void spokeUntil(double second) {
    spokeUntil = second;
  }

  /** Whether a bare yes or no has something to answer now. */
  public boolean awaitsYesOrNo() {
    return record.phase() == Phase.ENDING
        || record.toConfirm().isPresent()
        || record
            .openQuestion()
            .map(Asked::question)
            .filter(asked -> asked.lapsesByNo() || YES_OR_NO.contains(asked.kind()))
            .isPresent();
  }

  /** Takes in an utterance and what it means. */
  public Changes hear(Heard heard, Interpretation meaning) {
    Outcome outcome = heard.outcome();
    boolean counts = outcome == Outcome.ACCEPTED || outcome == Outcome.COMMAND;
    return switch (record.phase()) {
      case LISTENING, ENDING ->
          !counts
              ? mayAmend(heard)
                  ? keep(heard.withOutcome(Outcome.UNSURE), meaning.only(one -> false))
                  : keep(heard, meaning)
              : isTalk(meaning)
                  ? keep(heard.asTalk(), meaning)
                  : takesBackOfOld(heard, meaning)
                      ? keep(heard.withOutcome(Outcome.UNSURE), meaning)
                      : take(heard, meaning);
      case REMARK ->
          counts && says(meaning, Command.END_REMARK)
              ? take(heard, meaning.only(one -> isCommand(one, Command.END_REMARK)))
              : keep(heard.withOutcome(Outcome.REMARK), meaning);
      case PAUSED ->
          counts && meaning.meanings().stream().anyMatch(this::endsPause)
              ? take(heard, meaning.only(this::endsPause))
              : nothing();
      case ENDED, SIGNED, ADDENDUM -> nothing();
    };
  }

  private boolean endsPause(Meaning meaning) {
    boolean answers = isCommand(meaning, Command.YES) || isCommand(meaning, Command.NO);
    return isCommand(meaning, Command.RESUME)
        || answers && toLapse(Question.Kind.COMMAND).isPresent();
  }

  /** The utterance that is asked about and that only a yes right behind it confirms. */
  private Optional<Utterance> toLapse(Question.Kind... kinds) {
    return record
        .openQuestion()
        .filter(asked -> List.of(kinds).contains(asked.question().kind()))
        .flatMap(asked -> record.utterance(asked.utterance()));
  }

  // "Carry on" while it listens anyway.
  private boolean isTalk(Interpretation meaning) {
    return !meaning.meanings().isEmpty()
        && meaning.meanings().stream()
            .allMatch(
                one ->
                    one instanceof Meaning.Instruction said
                        && said.doubtful()
                        && !CommandHandler.isToAsk(said.command(), record));
  }

  // "Sorry, right" is said to parents too: it moves only what was said just before.
  private boolean takesBackOfOld(Heard heard, Interpretation meaning) {
    return meaning.of(Meaning.Withdraws.class).findAny().isPresent()
        && lastSaid().filter(last -> isRightBehind(heard, last)).isEmpty();
  }

  // "No sign of left" behind a finding may be a "no, sorry, left" that was misheard: it stays to be
  // looked at.
  private boolean mayAmend(Heard heard) {
    return heard.outcome() == Outcome.IGNORED
        && AMENDS.matcher(heard.text()).matches()
        && lastSaid().filter(last -> isRightBehind(heard, last)).isPresent();
  }

  private Optional<Utterance> lastSaid() {
    return record.utterances().stream()
        .filter(one -> one.heard().outcome() == Outcome.ACCEPTED)
        .reduce((first, last) -> last);
  }

  private static boolean says(Interpretation meaning, Command command) {
    return meaning.meanings().stream().anyMatch(one -> isCommand(one, command));
  }

  private static boolean isCommand(Meaning meaning, Command command) {
    return meaning instanceof Meaning.Instruction said && said.command() == command;
  }

  private Changes nothing() {
    return new Changes(List.of(), List.of(), record);
  }

  private Changes take(Heard heard, Interpretation meaning) {
    Dialogue next = moved(meaning);
    boolean picks = meaning.meanings().stream().anyMatch(Meaning.Picks.class::isInstance);
    Optional<Offer> offered =
        record.toConfirm().filter(waiting -> isRightBehind(heard, waiting, picks));
    Optional<Offer> passed = record.toConfirm().filter(one -> picks && offered.isEmpty());
    Optional<List<Offer.Part>> kept = offered.flatMap(waiting -> waiting.kept(meaning));
    boolean stray = says(meaning, Command.YES) || says(meaning, Command.NO);
    boolean together = offered.filter(one -> one.way() == Offer.Way.TOGETHER).isPresent();
    if (stray
        && kept.isEmpty()
        && !together
        && record.toConfirm().filter(one -> one.way() != Offer.Way.AT_END).isPresent()) {
      // Long after an offer it answers neither that nor what was asked before.
      return keep(heard.asTalk(), meaning);
    }
    boolean late =
        toLapse(Question.Kind.COMMAND, Question.Kind.FACT)
            .filter(one -> !isRightBehind(heard, one))
            .isPresent();
    Changes changes =
        change(
            batch -> {
              if (late) {
                new QuestionUpkeep(batch, null).dropLapsed();
              }
              int utterance = batch.nextUtterance();
              batch.add(
                  new Event.UtteranceHeard(
                      utterance,
                      heard,
                      List.of(),
                      List.of(),
                      List.of(),
                      meaning.uncovered(),
                      next.region()));
              UtteranceHandler handler = new UtteranceHandler(batch, utterance, heard);
              if (kept.isPresent()) {
                return confirm(batch, offered.get(), kept.get(), utterance);
              }
              if (together && stray) {
                // Several are taken by "yes to all" alone: so that it is said, they are read again.
                batch.add(Event.OfferAsked.of(offered.get().utterances(), utterance));
                return List.of();
              }
              if (passed.isPresent()) {
                // Words between may have been about something else: it is asked again, not taken.
                batch.add(Event.OfferAsked.of(passed.get().utterances(), utterance));
                return List.of();
              }
              handler.take(meaning);
              readOut(batch, utterance);
              return handler.commands();
            });
    dialogue = next;
    return changes;
  }

  /** Reads out what waits once it is much, unless something is asked of what was just said. */
  private static void readOut(EventBatch batch, int utterance) {
    boolean asks =
        batch
            .record()
            .openQuestion()
            .filter(asked -> Integer.valueOf(utterance).equals(asked.utterance()))
            .isPresent();
    List<Utterance> waiting = new OpenOffers(batch.record()).toReadOut();
    if (batch.record().phase() == Phase.LISTENING && !asks && !waiting.isEmpty()) {
      batch.add(Event.OfferAsked.of(waiting, utterance));
    }
  }

  // Where it was read out, the next offer follows, unless what it lacks is asked first.
  private List<Command> confirm(
      EventBatch batch, Offer offered, List<Offer.Part> kept, Integer by) {
    boolean again = offered.way() != Offer.Way.ALONE || record.offerAsked().isPresent();
    for (Utterance one : offered.utterances()) {
      List<Meaning> ofOne =
          kept.stream().filter(part -> part.of().equals(one)).map(Offer.Part::meaning).toList();
      new UtteranceHandler(batch, one.number(), one.heard()).confirm(one, ofOne);
    }
    new QuestionUpkeep(batch, by).run();
    if (again && kept.stream().noneMatch(part -> part.meaning() instanceof Meaning.Asks)) {
      CommandHandler handler = new CommandHandler(batch, by, null);
      if (offered.way() == Offer.Way.AT_END || !handler.offerNext()) {
        handler.askEndAgain();
      }
    }
    return List.of(kept.isEmpty() ? Command.NO : Command.YES);
  }

  // What the end would leave out is shown for as long as the end is asked about. "Yes to all" and
  // "only the first" say themselves what they answer, so that they may come after a long silence.
  private boolean isRightBehind(Heard answer, Offer offered, boolean picks) {
    Utterance last = offered.parts().get(offered.parts().size() - 1).of();
    Utterance by =
        record.offerAsked().map(Event.OfferAsked::by).flatMap(record::utterance).orElse(last);
    double reading = (offered.places().size() - 1) * READING;
    double within = picks ? Double.POSITIVE_INFINITY : LONGEST_WAIT + reading;
    return offered.way() == Offer.Way.AT_END || isRightBehind(answer, by, within);
  }

  private boolean isRightBehind(Heard answer, Utterance waiting) {
    return isRightBehind(answer, waiting, LONGEST_WAIT);
  }

  // "Yes" is said to parents too: it confirms only what was said just before, with no talk between.
  // What was typed or pressed is meant.
  private boolean isRightBehind(Heard answer, Utterance waiting, double within) {
    boolean soon = answer.start() - Math.max(waiting.heard().end(), spokeUntil) <= within;
    boolean next =
        record.utterances().stream()
            .filter(one -> one.number() > waiting.number())
            .allMatch(one -> one.heard().text().isBlank());
    return answer.words().isEmpty() || soon && next;
  }

  /** The region that follows or precedes, where the interpreter has not moved there itself. */
  private Dialogue moved(Interpretation meaning) {
    Dialogue said = meaning.dialogue();
    int step = says(meaning, Command.NEXT_REGION) ? 1 : 0;
    step -= says(meaning, Command.PREVIOUS_REGION) ? 1 : 0;
    boolean still = java.util.Objects.equals(said.region(), dialogue.region());
    return step == 0 || !still ? said : new Dialogue(neighbour(step), List.of(), null);
  }

  private String neighbour(int step) {
    List<String> ids = record.protocol().regions().stream().map(Region::id).toList();
    int at = ids.indexOf(dialogue.region()) + step;
    return ids.get(Math.max(0, Math.min(ids.size() - 1, at)));
  }

  /** Keeps what does not count by itself; what an unsure utterance seems to say goes with it. */
  private Changes keep(Heard heard, Interpretation meaning) {
    // A yes would let both sides stand where one was to be moved: that is said again instead.
    boolean offers =
        heard.outcome() == Outcome.UNSURE
            && meaning.of(Meaning.Withdraws.class).findAny().isEmpty();
    List<Meaning.States> candidates =
        offers ? meaning.of(Meaning.States.class).toList() : List.of();
    List<Meaning.Asks> asks =
        offers
            ? meaning.of(Meaning.Asks.class).filter(one -> !one.findings().isEmpty()).toList()
            : List.of();
    // What a yes takes needs no reading back: it was read out. It says that it was heard right, not
    // that what was stated before is wrong: that is asked.
    List<Meaning.Fact> facts =
        offers
            ? meaning
                .of(Meaning.Fact.class)
                .map(fact -> new Meaning.Fact(fact.id(), fact.value()))
                .toList()
            : List.of();
    return change(
        batch -> {
          int utterance = batch.nextUtterance();
          batch.add(
              new Event.UtteranceHeard(
                  utterance, heard, candidates, asks, facts, meaning.uncovered(), null));
          if (!heard.text().isBlank()) {
            new QuestionUpkeep(batch, null).dropLapsed();
          }
          if (!candidates.isEmpty() || !asks.isEmpty() || !facts.isEmpty()) {
            readOut(batch, utterance);
          }
          return List.of();
        });
  }

  /** Carries out a command that was given by a key, at this second of the audio. */
  public Changes command(Command command, double at) {
    Meaning pressed = new Meaning.Instruction(command);
    Interpretation meaning = new Interpretation(List.of(pressed), List.of(), dialogue);
    Dialogue next = moved(meaning);
    Changes changes =
        change(
            batch -> {
              Optional<Offer> offered =
                  record.toConfirm().filter(one -> one.way() != Offer.Way.AT_END);
              if (offered.isPresent() && (command == Command.YES || command == Command.NO)) {
                List<Offer.Part> all = offered.get().parts();
                return confirm(
                    batch, offered.get(), command == Command.YES ? all : List.of(), null);
              }
              Optional<Command> agreed =
                  new CommandHandler(batch, null, Heard.typed("", at)).carryOut(command);
              new QuestionUpkeep(batch, null).run();
              return Stream.concat(Stream.of(command), agreed.stream()).toList();
            });
    dialogue = next;
    return changes;
  }

  /**
   * States a fact about the baby that was typed; it replaces an older value.
   *
   * @throws IllegalArgumentException when there is no such fact or it cannot have this value
   */
  public Changes context(String fact, String value, String author) {
    record.protocol().require(fact, value);
    return change(
        batch -> {
          new Context(batch, null, author).state(fact, value);
          new QuestionUpkeep(batch, null).run();
          return List.of();
        });
  }

  /** Notes which rules apply now: new ones are raised, the others cleared. */
  public Changes flags(List<RecordedFlag> flags) {
    List<RecordedFlag> open = record.openFlags();
    List<Event> events = new ArrayList<>();
    open.stream()
        .filter(flag -> !flags.contains(flag))
        .forEach(flag -> events.add(new Event.FlagCleared(flag)));
    flags.stream()
        .distinct()
        .filter(flag -> !open.contains(flag))
        .forEach(flag -> events.add(new Event.FlagRaised(flag)));
    return append(events.toArray(Event[]::new));
  }

  /**
   * Goes on with an examination after a break; one that had ended listens again.
   *
   * @throws IllegalStateException when it is signed
   */
  public Changes goOn(String tool, String author) {
    if (!record.signatures().isEmpty()) {
      throw new IllegalStateException("the record is signed: it can only be reviewed");
    }
    return append(new Event.ExaminationContinued(tool, author));
  }

  /** Notes what needs no decision. */
  public Changes note(Event.Notice notice) {
    return append(notice);
  }

  /** Edits by a reviewer of this name. */
  public Review review(String author) {
    return new Review(this, author);
  }

  /** Signs all that is kept up to now, at the time that the entry will have. */
  Changes sign(String name, String role, Map<String, String> audio, Signer signer) {
    if (!SignerName.isVisible(name) || !SignerName.isVisible(role)) {
      throw new IllegalArgumentException("expected a name and a role in visible letters");
    }
    return change(
        batch -> {
          SignedStatement statement =
              new SignedStatement(
                  record.opened().id(),
                  sink.headAfter(batch.at(), batch.events()),
                  record.entries().size() + batch.events().size() + 1L,
                  batch.at(),
                  name,
                  role,
                  audio);
          batch.add(
              new Event.Signed(
                  name, role, audio, batch.at(), signer.key(), signer.signature(statement)));
          return List.of();
        });
  }

  /** Keeps events that need no decision. */
  Changes append(Event... events) {
    return change(
        batch -> {
          List.of(events).forEach(batch::add);
          return List.of();
        });
  }

  /**
   * Decides on events, keeps them, and only then counts them. One at a time, since sound that is
   * complete is noted by the thread that stores it.
   */
  synchronized Changes change(Function<EventBatch, List<Command>> decide) {
    Instant now = clock.instant();
    EventBatch batch = new EventBatch(record, now.atZone(clock.getZone()), words);
    noteClock(batch, now);
    List<Command> commands = decide.apply(batch);
    if (batch.events().isEmpty()) {
      return new Changes(List.of(), commands, record);
    }
    List<Entry> kept = sink.append(now, batch.events());
    kept.forEach(fold::apply);
    record = fold.toRecord();
    return new Changes(kept, commands, record);
  }

  private void noteClock(EventBatch batch, Instant now) {
    List<Entry> entries = record.entries();
    if (!entries.isEmpty()) {
      Instant last = entries.get(entries.size() - 1).at();
      if (now.plus(NOTABLE).isBefore(last)) {
        batch.add(new Event.ClockWentBack(last));
      }
    }
  }
}
