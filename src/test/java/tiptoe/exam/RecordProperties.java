package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import tiptoe.exam.journal.Chain;
import tiptoe.exam.journal.EventLines;
import tiptoe.exam.journal.MemorySink;
import tiptoe.files.Sha256;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.FindingNotation;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.speech.Word;

/** What holds whatever happens. */
class RecordProperties {
  private static final Protocol PROTOCOL = Protocol.standard();
  private static final List<String> FINDINGS =
      List.of(
          "barlow.left positive",
          "barlow.left negative",
          "barlow.right negative",
          "barlow not-examined",
          "clavicle crepitus",
          "clavicle.left intact",
          "clavicle.left intact !crepitus",
          "clavicle.left crepitus",
          "clavicle.left swelling",
          "red-reflex.left present symmetric=yes",
          "red-reflex.right present symmetric=yes",
          "red-reflex.right absent",
          "murmur present grade=2",
          "murmur present grade=3 radiation=none",
          "murmur none !present",
          "scalp cephalohaematoma",
          "scalp.left cephalohaematoma",
          "scalp clear [region]",
          "testis.left descended",
          "labia normal",
          "labia normal [region]",
          "weight 3420 g",
          "weight 4320 g",
          "moro.left asymmetric",
          "moro.right asymmetric");

  @Property
  void anySequenceOfEventsFoldsAndFoldsTheSameOneByOne(@ForAll("events") List<Event> events) {
    MemorySink sink = new MemorySink();
    List<Entry> entries = sink.append(Instant.EPOCH, events);
    ExamRecord all = ExamRecord.fold(PROTOCOL, entries);
    ExamRecord oneByOne = ExamRecord.empty(PROTOCOL);
    for (Entry entry : entries) {
      Fold fold = new Fold(oneByOne);
      fold.apply(entry);
      oneByOne = fold.toRecord();
    }
    assertEquals(all, oneByOne);
    readEverything(all);
  }

  @Property
  void aLineReadsBackAsTheEventItWas(@ForAll("events") List<Event> events) throws Exception {
    Chain chain = Chain.start();
    for (Event event : events) {
      Chain.Line line = chain.next(Instant.parse("2026-03-01T09:00:00.123456Z"), event);
      chain.accept(line);
      assertEquals(line.entry(), EventLines.read(line.bytes()));
    }
  }

  @Property
  void whateverIsSaidAndEditedTheRecordIsTheFoldOfItsEntriesAndHoldsTogether(
      @ForAll("moves") List<Move> moves) {
    Bedside bed = new Bedside();
    Review review = bed.exam.review("Dr Reed");
    for (Move move : moves) {
      move.make(bed, review);
      holdsTogether(bed.record());
    }
    assertEquals(bed.record(), ExamRecord.fold(PROTOCOL, bed.record().entries()));
    String before = Entry.NONE_BEFORE;
    for (Entry entry : bed.record().entries()) {
      assertEquals(before, entry.prev());
      before = Sha256.hexOf(EventLines.line(entry).bytes());
    }
  }

  /** No two answers exclude each other, and what waits has a question. */
  private static void holdsTogether(ExamRecord record) {
    for (RecordedFinding said : record.statements()) {
      if (said.status() == Status.WAITS) {
        assertTrue(
            record.openQuestions().stream().anyMatch(asked -> is(asked, said)),
            "nothing asks about " + said);
      }
      boolean reviewed = said.author() != null;
      if (said.stands() && !reviewed && !said.statement().group()) {
        List<StandingFinding> others =
            StandingFinding.of(PROTOCOL, record.statements(), Status.STANDS).stream()
                .filter(other -> other.finding().step().equals(said.statement().step()))
                .filter(other -> other.base().number() != said.number())
                .filter(other -> other.side() == said.statement().side())
                .filter(other -> other.base().author() == null)
                .toList();
        var step = PROTOCOL.step(said.statement().step());
        for (StandingFinding other : others) {
          assertTrue(
              !Placing.exclude(step, other, said.statement(), true),
              other + " stands beside " + said);
        }
      }
    }
  }

  private static boolean is(Asked asked, RecordedFinding said) {
    return asked.statement() != null && asked.statement() == said.number();
  }

  private static void readEverything(ExamRecord record) {
    record.answers();
    record.missing();
    record.missingDetails();
    record.progress();
    record.openQuestion();
    record.contradictions();
    record.unsure();
    record.openFlags();
    record.label();
  }

  /** Something the clinician or the reviewer does. */
  record Move(String name, java.util.function.BiConsumer<Bedside, Review> what) {
    void make(Bedside bed, Review review) {
      if (bed.record().signed()) {
        assertThrows(IllegalStateException.class, () -> review.remark("late"));
        review.startAddendum("something was forgotten");
      }
      what.accept(bed, review);
    }

    @Override
    public String toString() {
      return name;
    }
  }

  @Provide
  Arbitrary<List<Move>> moves() {
    Arbitrary<Integer> number = Arbitraries.integers().between(1, 12);
    Arbitrary<Move> finding =
        Arbitraries.of(FINDINGS)
            .list()
            .ofMinSize(1)
            .ofMaxSize(3)
            .map(
                list ->
                    new Move(
                        "find " + list, (bed, review) -> bed.find(list.toArray(String[]::new))));
    Arbitrary<Move> correction =
        Arbitraries.of(FINDINGS)
            .map(text -> new Move("correct " + text, (bed, review) -> bed.correct(text)));
    Arbitrary<Move> unsure =
        Arbitraries.of(FINDINGS)
            .map(
                text ->
                    new Move(
                        "unsure " + text,
                        (bed, review) ->
                            bed.hear(text, Outcome.UNSURE, Bedside.finding(text, false))));
    Arbitrary<Move> command =
        Arbitraries.of(
                Command.YES,
                Command.NO,
                Command.STRIKE,
                Command.PAUSE,
                Command.RESUME,
                Command.START_REMARK,
                Command.END_REMARK)
            .map(one -> new Move("command " + one.id(), (bed, review) -> bed.command(one)));
    Arbitrary<Move> fact =
        Arbitraries.of("girl", "boy")
            .map(sex -> new Move(sex, (bed, review) -> bed.fact("sex", sex)));
    Arbitrary<Move> answer =
        Arbitraries.of(FINDINGS)
            .map(
                text ->
                    new Move(
                        "answer " + text,
                        (bed, review) -> {
                          Question open = bed.exam.dialogue().open();
                          if (open != null) {
                            bed.say(text, new Meaning.Answers(open), Bedside.finding(text, false));
                          }
                        }));
    Arbitrary<Move> edit =
        Combinators.combine(Arbitraries.integers().between(0, 14), number, Arbitraries.of(FINDINGS))
            .as(
                (kind, n, text) ->
                    new Move(
                        "edit " + kind + " " + n + " " + text,
                        (bed, review) -> edit(bed, review, kind, n, text)));
    return Arbitraries.frequencyOf(
            Tuple.of(8, finding),
            Tuple.of(2, correction),
            Tuple.of(1, unsure),
            Tuple.of(4, command),
            Tuple.of(1, fact),
            Tuple.of(2, answer),
            Tuple.of(4, edit))
        .list()
        .ofMaxSize(25);
  }

  private static void edit(Bedside bed, Review review, int kind, int number, String text) {
    Finding statement = FindingNotation.parse(text);
    Finding placed =
        PROTOCOL.step(statement.step()).sided() && statement.side() == null
            ? statement.withSide(Side.LEFT)
            : statement;
    boolean there = bed.record().statement(number).isPresent();
    switch (kind) {
      case 0 -> review.undo();
      case 1 -> review.redo();
      case 2 -> review.state(placed);
      case 3 -> {
        List<Meaning> all =
            bed.record().utterance(number).stream()
                .flatMap(heard -> heard.offered().stream())
                .filter(part -> !(part instanceof Meaning.Asks))
                .toList();
        review.acceptOffered(number, all);
      }
      case 4 -> review.settle(number, true);
      case 5 -> review.notExamined(placed.step(), placed.side(), "asleep");
      case 6 -> {
        if (there) {
          review.reject(number, "mis-heard");
        }
      }
      case 7 -> review.remark(text);
      case 8 -> review.sign("registrar", Map.of(), Signer.NAME_ONLY);
      case 9 -> review.dismiss(number);
      case 10 -> review.drop(number, "passed over");
      case 11 -> review.reword(number, text);
      case 12 -> review.context(Map.of("sex", number % 2 == 0 ? "girl" : "boy"));
      case 13 -> {
        Question open = bed.exam.dialogue().open();
        List<Meaning> meanings = new ArrayList<>();
        if (open != null) {
          meanings.add(new Meaning.Answers(open));
        }
        meanings.add(new Meaning.Fact("age", String.valueOf(number)));
        meanings.add(new Meaning.States(placed, false));
        review.enter(text, new Interpretation(meanings, List.of(), bed.exam.dialogue()), number);
      }
      default -> {
        if (there) {
          review.change(number, placed);
        }
      }
    }
  }

  @Provide
  Arbitrary<List<Event>> events() {
    Arbitrary<Integer> number = Arbitraries.integers().between(0, 6);
    Arbitrary<List<Integer>> numbers = number.list().ofMaxSize(3);
    Arbitrary<Finding> statement = Arbitraries.of(FINDINGS).map(FindingNotation::parse);
    Arbitrary<Event> made =
        Combinators.combine(number, statement, Arbitraries.of(Effect.class), numbers)
            .as(
                (n, one, effect, of) ->
                    new Event.StatementMade(n, one, false, n, effect, of, null));
    Arbitrary<Event> settled =
        Combinators.combine(number, Arbitraries.of(Effect.class), numbers)
            .as((n, effect, of) -> new Event.StatementSettled(n, effect, of, null));
    Arbitrary<Event> asked =
        Combinators.combine(
                number, statement, Arbitraries.of(Question.Kind.class), number.injectNull(0.5))
            .as(
                (n, one, kind, about) ->
                    new Event.QuestionAsked(
                        n,
                        new Question(
                            kind, "palpated", one, null, List.of(), List.of(one), null, "?"),
                        false,
                        n,
                        about,
                        List.of(),
                        null,
                        null));
    Arbitrary<Event> heard =
        Combinators.combine(
                number, Arbitraries.of(Outcome.class), Arbitraries.strings().ofMaxLength(8))
            .as(
                (n, outcome, text) ->
                    new Event.UtteranceHeard(
                        n,
                        new Heard(n, n + 1, text, List.of(new Word(text, n, n, 1)), outcome, null),
                        List.of(),
                        List.of(),
                        List.of(new Meaning.Fact("sex", "girl")),
                        List.of("um"),
                        "hips"));
    Arbitrary<Event> struck =
        Combinators.combine(number, numbers)
            .as((n, of) -> new Event.Struck(n, of, of, Map.of("sex", "boy"), List.of("age")));
    Arbitrary<Event> undone =
        Arbitraries.longs().between(1, 20).list().ofMaxSize(4).map(of -> new Event.Undone(of, "R"));
    Arbitrary<Event> redone =
        Arbitraries.longs().between(1, 20).list().ofMaxSize(4).map(of -> new Event.Redone(of, "R"));
    return Arbitraries.oneOf(made, settled, asked, heard, struck, undone, redone, others(number))
        .list()
        .ofMaxSize(40)
        .map(ArrayList::new);
  }

  private static Arbitrary<Event> others(Arbitrary<Integer> number) {
    RecordedFlag flag = new RecordedFlag("urgent", "hips", "consider referral", List.of(1), null);
    List<Event> fixed =
        List.of(
            new Event.ExaminationOpened("e1", "Demo", "1", "0.1.0", null, null),
            new Event.ExaminationContinued("0.1.0", null),
            new Event.ContextStated("sex", "girl", 1, null),
            new Event.Paused(null),
            new Event.Resumed(2),
            new Event.AudioGap(1.5, 2, "gone"),
            new Event.TailSetAside(12, "unfinished-1.txt"),
            new Event.ClockWentBack(Instant.EPOCH),
            new Event.FlagRaised(flag),
            new Event.FlagCleared(flag),
            new Event.RemarkStarted(3, 1),
            new Event.EndAsked(List.of(new Slot("barlow", Side.LEFT)), 1),
            new Event.EndRefused(1),
            new Event.Ended(List.of(new Slot("anus", null)), null),
            new Event.Signed("Dr Reed", "paediatrician", Map.of("a.wav", "00"), null, null, null),
            new Event.AddendumStarted("late result", "Dr Reed"),
            new Event.AudioRemoved(List.of("a.wav"), "kept until signed"));
    Arbitrary<Event> numbered =
        number.flatMap(
            n ->
                Arbitraries.of(
                    new Event.QuestionAnswered(n, "left", n, null),
                    new Event.QuestionDropped(n, "passed over", null),
                    new Event.RemarkMade(n, "asleep", 1, 2, null),
                    new Event.RemarkReworded(n, "fast asleep", List.of(), "Dr Reed"),
                    new Event.StatementRejected(n, "mis-heard", "Dr Reed"),
                    new Event.UtteranceReviewed(n, true, "Dr Reed")));
    return Arbitraries.oneOf(Arbitraries.of(fixed), numbered);
  }
}
