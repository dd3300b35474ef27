package tiptoe.exam;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Value;

/**
 * Edits by a named reviewer. What the reviewer states stands at once, in place of what it
 * contradicts; the original stays visible. A signed record takes no edit until an addendum is
 * started.
 */
public final class Review {
  /** What a remark begins with in which a signer says why something is signed without it. */
  private static final String DESPITE = "signed while not settled: ";

  /**
   * The remark of whoever signs what is not settled.
   *
   * @param why in the signer's own words
   * @param altered what is not as it was recorded, as the signer was told it
   */
  public static String despite(String why, List<String> altered) {
    return DESPITE + why + (altered.isEmpty() ? "" : " (" + String.join("; ", altered) + ")");
  }

  private final Examination examination;
  private final String author;
  private final Deque<List<Long>> done = new ArrayDeque<>();
  private final Deque<List<Long>> undone = new ArrayDeque<>();

  Review(Examination examination, String author) {
    if (author == null || author.isBlank()) {
      throw new IllegalArgumentException("expected the reviewer's name, found none");
    }
    this.examination = examination;
    this.author = author;
  }

  /** States a finding; it replaces what stands in its place and contradicts it. */
  public Changes state(Finding statement) {
    return edit(batch -> make(batch, statement, null));
  }

  /**
   * Takes in a typed line as one edit: what it states stands at once, in place of what it
   * contradicts.
   *
   * @param words the line
   * @param meaning what it means; every finding of a step with sides must have its side
   * @param question number of the question it may answer; null when none was shown
   */
  public Changes enter(String words, Interpretation meaning, Integer question) {
    Protocol protocol = examination.record().protocol();
    meaning.of(Meaning.Fact.class).forEach(fact -> protocol.require(fact.id(), fact.value()));
    meaning.of(Meaning.States.class).map(Meaning.States::statement).forEach(this::requireSide);
    return edit(
        batch -> {
          Integer utterance = null;
          Optional<Asked> asked = openQuestion(batch, question);
          if (asked.isPresent() && meaning.of(Meaning.Answers.class).findAny().isPresent()) {
            utterance = asked.get().utterance();
            new ContradictionSettlement(batch, null, author).instead(asked.get(), words);
          }
          Context context = new Context(batch, null, author);
          meaning.of(Meaning.Fact.class).forEach(fact -> context.state(fact.id(), fact.value()));
          for (Finding statement : meaning.statements()) {
            for (Finding sided : withSides(statement)) {
              make(batch, sided, utterance);
            }
          }
        });
  }

  private static Optional<Asked> openQuestion(EventBatch batch, Integer number) {
    return batch.record().openQuestions().stream()
        .filter(asked -> Integer.valueOf(asked.number()).equals(number))
        .findFirst();
  }

  /** What is said of a whole region, or left out, goes for both sides. */
  private List<Finding> withSides(Finding statement) {
    boolean both =
        statement.side() == null && examination.record().protocol().step(statement.step()).sided();
    return both
        ? List.of(statement.withSide(Side.RIGHT), statement.withSide(Side.LEFT))
        : List.of(statement);
  }

  private void requireSide(Finding statement) {
    boolean both = statement.group() || Value.NOT_EXAMINED.equals(statement.value());
    if (!both && withSides(statement).size() > 1) {
      throw new IllegalArgumentException("expected a side for " + statement.step());
    }
  }

  /** Puts a statement in the place of another: other side, other value, other details. */
  public Changes change(int statement, Finding to) {
    existing(statement);
    return edit(
        batch -> {
          Set<Integer> of = new LinkedHashSet<>(List.of(statement));
          of.addAll(new Placing(batch.record(), null).inTheWay(to));
          batch.add(
              new Event.StatementMade(
                  batch.nextStatement(), to, true, null, Effect.STANDS, List.copyOf(of), author));
        });
  }

  public Changes reject(int statement, String reason) {
    existing(statement);
    return edit(batch -> batch.add(new Event.StatementRejected(statement, reason, author)));
  }

  /** Accepts an unsure utterance, with what it is taken to say. */
  public Changes accept(int utterance, List<Finding> statements) {
    return edit(batch -> accept(batch, utterance, statements));
  }

  private void accept(EventBatch batch, int utterance, List<Finding> statements) {
    Series series = new Series(batch.record().protocol(), statements);
    statements.forEach(
        statement -> make(batch, series.numbered(batch.record(), statement), utterance));
    batch.add(new Event.UtteranceReviewed(utterance, true, author));
  }

  /**
   * Accepts an unsure utterance with what it seems to say; what lacks its side, its limb or a
   * possible number is asked.
   *
   * @param parts the findings and facts of it that are right
   */
  public Changes acceptOffered(int utterance, List<Meaning> parts) {
    return edit(
        batch -> {
          Context context = new Context(batch, utterance, author);
          List<Finding> findings = new ArrayList<>();
          for (Meaning part : parts) {
            if (part instanceof Meaning.Fact fact) {
              if (batch.record().protocol().problem(fact.id(), fact.value()).isPresent()) {
                batch.ask(Question.fact(fact.id(), fact.value()), false, utterance);
              } else {
                context.state(fact.id(), fact.value());
              }
            } else {
              findings.addAll(part.findings());
            }
          }
          accept(batch, utterance, findings);
          batch.record().utterance(utterance).stream()
              .flatMap(heard -> heard.asks().stream())
              .forEach(asks -> batch.ask(asks.question(), asks.correction(), utterance));
        });
  }

  public Changes dismiss(int utterance) {
    return edit(batch -> batch.add(new Event.UtteranceReviewed(utterance, false, author)));
  }

  /** Leaves a step out, for a reason; null side for both sides of a sided step. */
  public Changes notExamined(String step, Side side, String reason) {
    Finding left = Finding.of(step, side, Value.NOT_EXAMINED).withDetails(Map.of("reason", reason));
    return edit(batch -> withSides(left).forEach(one -> make(batch, one, null)));
  }

  /** Answers a contradiction: whether the newer of the two is right. */
  public Changes settle(int question, boolean newerIsRight) {
    return edit(
        batch -> {
          ContradictionSettlement settlement = new ContradictionSettlement(batch, null, author);
          openQuestion(batch, question)
              .ifPresent(newerIsRight ? settlement::newer : settlement::older);
        });
  }

  /** Closes an open question without an answer; what waited for the answer does not count. */
  public Changes drop(int question, String reason) {
    return edit(
        batch ->
            openQuestion(batch, question)
                .ifPresent(
                    asked -> new ContradictionSettlement(batch, null, author).none(asked, reason)));
  }

  public Changes remark(String text) {
    return edit(batch -> batch.add(new Event.RemarkMade(batch.nextRemark(), text, 0, 0, author)));
  }

  public Changes reword(int remark, String text) {
    return edit(batch -> batch.add(new Event.RemarkReworded(remark, text, List.of(), author)));
  }

  /** States several facts as one edit, such as who the baby is. */
  public Changes context(Map<String, String> facts) {
    facts.forEach(examination.record().protocol()::require);
    return edit(
        batch -> facts.forEach((id, value) -> new Context(batch, null, author).state(id, value)));
  }

  /**
   * Ticks an item of the plan off, or says that it was not done after all.
   *
   * @param item its id
   * @param what the item, for people
   * @param note in the reviewer's own words; may be null
   */
  public Changes tick(String item, String what, boolean done, String note) {
    return edit(batch -> batch.add(new Event.ItemTicked(item, what, done, note, author)));
  }

  /** Takes back the last edit of this review, unless something was said or edited since. */
  public Changes undo() {
    if (done.isEmpty() || isBuiltUpon(done.peek())) {
      return examination.append();
    }
    List<Long> entries = done.peek();
    Changes changes = examination.append(new Event.Undone(entries, author));
    undone.push(done.pop());
    return changes;
  }

  /** Whether something that counts came behind these entries. */
  private boolean isBuiltUpon(List<Long> edit) {
    Set<Long> gone = new HashSet<>(edit);
    undone.forEach(gone::addAll);
    long last = edit.get(edit.size() - 1);
    return examination.record().entries().stream()
        .filter(entry -> entry.seq() > last && !gone.contains(entry.seq()))
        .anyMatch(entry -> !isAside(entry.event()));
  }

  private static boolean isAside(Event event) {
    return event instanceof Event.Undone
        || event instanceof Event.Redone
        || event instanceof Event.SegmentKept
        || event instanceof Event.FlagRaised
        || event instanceof Event.FlagCleared
        || event instanceof Event.ClockWentBack;
  }

  /** Makes the edit count again that was undone last, unless something was said or edited since. */
  public Changes redo() {
    if (undone.isEmpty() || isBuiltUpon(undone.peek())) {
      return examination.append();
    }
    Changes changes = examination.append(new Event.Redone(undone.peek(), author));
    done.push(undone.pop());
    return changes;
  }

  /**
   * Signs the record as it is; edits before it cannot be undone any more.
   *
   * @param audio file name to SHA-256 of every audio segment there is
   * @param signer has the key, or is {@link Signer#NAME_ONLY}
   */
  public Changes sign(String role, Map<String, String> audio, Signer signer) {
    requireOpen();
    Changes changes = examination.sign(author, role, audio, signer);
    done.clear();
    undone.clear();
    return changes;
  }

  /** Opens a signed record for edits that will be signed by themselves. */
  public Changes startAddendum(String reason) {
    if (examination.record().phase() != Phase.SIGNED) {
      throw new IllegalStateException("expected a signed record");
    }
    return examination.append(new Event.AddendumStarted(reason, author));
  }

  private void existing(int statement) {
    if (examination.record().statement(statement).isEmpty()) {
      throw new IllegalArgumentException("expected a statement, found none of number " + statement);
    }
  }

  private void requireOpen() {
    if (examination.record().signed()) {
      throw new IllegalStateException("the record is signed: start an addendum first");
    }
  }

  private void make(EventBatch batch, Finding statement, Integer utterance) {
    Placement verdict = new Placing(batch.record(), utterance).byReviewer(statement);
    batch.add(
        new Event.StatementMade(
            batch.nextStatement(),
            statement,
            true,
            utterance,
            verdict.effect(),
            verdict.of(),
            author));
  }

  private Changes edit(Consumer<EventBatch> decide) {
    requireOpen();
    Changes changes =
        examination.change(
            batch -> {
              decide.accept(batch);
              new QuestionUpkeep(batch, null).run();
              return List.of();
            });
    if (!changes.isEmpty()) {
      done.push(
          changes.entries().stream()
              .filter(entry -> !(entry.event() instanceof Event.ClockWentBack))
              .map(Entry::seq)
              .toList());
      undone.clear();
    }
    return changes;
  }
}
