package tiptoe.exam;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Value;

/**
 * The record at one moment: what its events fold to. It never changes; {@link #apply} gives the
 * next one.
 *
 * @param opened the first event; null before it
 * @param region id of the region the dialogue is in; null before the first
 * @param statements every statement ever made, in order
 * @param utterances everything that was heard, used or not, in order
 * @param questions every question ever asked, in order
 * @param gaps stretches that were not heard
 * @param flags every flag ever raised, in order
 * @param ticked what of the plan was ticked off, by the id of the item
 * @param ended when the examination ended; null before that
 * @param entries the events
 */
public record ExamRecord(
    Protocol protocol,
    Event.ExaminationOpened opened,
    Phase phase,
    String region,
    Baby baby,
    List<RecordedFinding> statements,
    List<Utterance> utterances,
    List<Asked> questions,
    List<Remark> remarks,
    List<UnheardSound> gaps,
    List<FlagHistory> flags,
    List<Signature> signatures,
    List<Note> notes,
    Map<String, Handled> ticked,
    Instant ended,
    List<Entry> entries) {
  private static final Set<String> PRESSING = Set.of("urgent", "emergency");

  public ExamRecord {
    gaps = List.copyOf(gaps);
    flags = List.copyOf(flags);
    signatures = List.copyOf(signatures);
    notes = List.copyOf(notes);
    ticked = Map.copyOf(ticked);
    entries = List.copyOf(entries);
  }

  /** The record before anything happened. */
  public static ExamRecord empty(Protocol protocol) {
    return new Fold(protocol).toRecord();
  }

  /** The record these events fold to. */
  public static ExamRecord fold(Protocol protocol, List<Entry> entries) {
    Fold fold = new Fold(protocol);
    entries.forEach(fold::apply);
    return fold.toRecord();
  }

  /** What happened of one kind, in order. */
  public <E extends Event> Stream<E> events(Class<E> kind) {
    return entries.stream().map(Entry::event).filter(kind::isInstance).map(kind::cast);
  }

  /** What stands, from head to toe. */
  public List<Answer> answers() {
    return StandingFinding.answers(protocol, statements);
  }

  /**
   * What was said and neither stands nor was taken back: findings that wait because they contradict
   * what stands, those that lack their side, step or a number that can be right, and those that
   * unsure utterances seem to state and nobody has reviewed. They may be right, so whatever is
   * worse in them must be told.
   */
  public List<Answer> unsettled() {
    Stream<Finding> unstated =
        Stream.concat(
            openQuestions().stream().flatMap(asked -> asked.question().waiting().stream()),
            unsure().stream().flatMap(Utterance::seems));
    return Stream.concat(
            waiting().stream(), unstated.map(finding -> new Answer(finding, Answer.NO_STATEMENT)))
        .filter(answer -> protocol.find(answer.step()).isPresent() && !answer.group())
        .filter(answer -> !Value.NOT_EXAMINED.equals(answer.value()))
        .distinct()
        .toList();
  }

  /** Findings that wait because they contradict what stands. */
  public List<Answer> waiting() {
    return StandingFinding.of(protocol, statements, Status.WAITS).stream()
        .map(waiting -> new Answer(waiting.finding(), waiting.base().number()))
        .toList();
  }

  /** What stands for this step, on whichever side. */
  public List<Answer> answers(String step) {
    return answers().stream().filter(answer -> answer.step().equals(step)).toList();
  }

  /**
   * Slots without an answer, for this baby: key steps first, else from head to toe. What was left
   * out is owed and so among them; see {@link #deferred()}.
   */
  public List<Slot> missing() {
    return new Checklist(this).missing();
  }

  /**
   * Missing slots that were said not to be examined, with the reason; empty where none was said.
   */
  public Map<Slot, String> deferred() {
    return new Checklist(this).deferred();
  }

  /** Key slots without an answer. */
  public List<Slot> missingKeySteps() {
    return new Checklist(this).missingKeySteps();
  }

  /** Details that the protocol asks for and that no standing answer holds. */
  public List<MissingDetail> missingDetails() {
    return new Checklist(this).missingDetails();
  }

  /** One for each region, from head to toe. */
  public List<Progress> progress() {
    return new Checklist(this).progress();
  }

  /** Questions that still want an answer, oldest first. */
  public List<Asked> openQuestions() {
    return questions.stream().filter(Asked::open).toList();
  }

  /**
   * The one question to show: the first of the newest utterance that has one. A bare answer is
   * nearly always meant for what was said last, and an older question comes back afterwards.
   */
  public Optional<Asked> openQuestion() {
    List<Asked> open = openQuestions();
    int newest = open.stream().mapToInt(ExamRecord::utterance).max().orElse(0);
    return open.stream().filter(asked -> utterance(asked) == newest).findFirst();
  }

  private static int utterance(Asked asked) {
    return asked.utterance() == null ? 0 : asked.utterance();
  }

  /** What cannot both be right and is not settled. */
  public List<Contradiction> contradictions() {
    return openQuestions().stream()
        .filter(asked -> asked.statement() != null || asked.fact() != null)
        .filter(asked -> asked.question().kind() != Question.Kind.FACT)
        .map(this::contradiction)
        .toList();
  }

  private Contradiction contradiction(Asked asked) {
    RecordedFinding newer =
        asked.statement() == null ? null : statement(asked.statement()).orElse(null);
    RecordedFinding older =
        asked.against().isEmpty() ? null : statement(asked.against().get(0)).orElse(null);
    return new Contradiction(asked.number(), newer, older, asked.question().text());
  }

  /**
   * A fact as it stands, with who stated it and when; what was dictated is the examiner's. The last
   * time that it was stated so counts.
   */
  public Optional<Stated> stated(String fact) {
    Optional<String> value = baby.fact(fact);
    for (int i = entries.size() - 1; i >= 0 && value.isPresent(); i--) {
      if (entries.get(i).event() instanceof Event.ContextStated one
          && one.fact().equals(fact)
          && one.value().equals(value.get())) {
        String examiner = opened == null ? null : opened.author();
        String by = one.author() == null ? examiner : one.author();
        return Optional.of(new Stated(fact, one.value(), entries.get(i).at(), by));
      }
    }
    return value.map(now -> new Stated(fact, now, null, null));
  }

  public Optional<RecordedFinding> statement(int number) {
    return statements.stream().filter(said -> said.number() == number).findFirst();
  }

  public Optional<Utterance> utterance(int number) {
    return utterances.stream().filter(heard -> heard.number() == number).findFirst();
  }

  /** Unsure utterances that the reviewer has not dealt with. */
  public List<Utterance> unsure() {
    return utterances.stream().filter(Utterance::waits).toList();
  }

  /** What is offered now and waits for an answer. */
  public Optional<Offer> toConfirm() {
    return new OpenOffers(this).asked();
  }

  /** The offer that was made again, until something else is heard. */
  Optional<Event.OfferAsked> offerAsked() {
    for (int i = entries.size() - 1; i >= 0; i--) {
      if (entries.get(i).event() instanceof Event.OfferAsked asked) {
        return Optional.of(asked);
      }
      if (entries.get(i).event() instanceof Event.UtteranceHeard heard
          && heard.heard().outcome() != Outcome.IGNORED) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  /**
   * What unsure utterances seem to say and does not stand, oldest first: each can be recorded by a
   * yes, so it is not simply missing.
   */
  public List<Offer.Part> offers() {
    return new OpenOffers(this).parts();
  }

  /** Key slots without an answer that no offer would fill. */
  public List<Slot> missingKeyStepsBesideOffers() {
    Set<Slot> offered =
        offers().stream()
            .map(Offer.Part::meaning)
            .filter(Meaning.States.class::isInstance)
            .flatMap(one -> one.findings().stream())
            .map(said -> new Slot(said.step(), said.side()))
            .collect(Collectors.toSet());
    return missingKeySteps().stream().filter(slot -> !offered.contains(slot)).toList();
  }

  /** Flags of rules that apply now. */
  public List<RecordedFlag> openFlags() {
    return flags.stream().filter(FlagHistory::open).map(FlagHistory::flag).toList();
  }

  /** Open flags that rest on what is not settled and would be urgent or an emergency. */
  public List<RecordedFlag> pressing() {
    return openFlags().stream()
        .filter(flag -> flag.provisional() != null && PRESSING.contains(flag.level()))
        .toList();
  }

  /** Second of the audio that has been heard up to. */
  public double seconds() {
    return Math.max(
        utterances.stream().mapToDouble(one -> one.heard().end()).max().orElse(0),
        gaps.stream().mapToDouble(gap -> gap.from() + gap.seconds()).max().orElse(0));
  }

  /** Whether it is signed and nothing was edited since. */
  public boolean signed() {
    return phase == Phase.SIGNED;
  }

  /** The label: as stated, else as it was opened with. */
  public Optional<String> label() {
    return baby.fact("label")
        .or(() -> Optional.ofNullable(opened).map(Event.ExaminationOpened::label));
  }
}
