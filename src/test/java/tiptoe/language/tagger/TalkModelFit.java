package tiptoe.language.tagger;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Interpreter;
import tiptoe.language.Meaning;
import tiptoe.language.SecondReading;
import tiptoe.language.Shipped;
import tiptoe.language.TalkLimits;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;
import tiptoe.session.UtteranceVerifier;

/**
 * Prints what each limit of {@code talk.yaml} would keep back of what {@code TalkModel} learns
 * from, each sentence judged by a model that has not learned from its author, with commas and
 * without. Only authors whose heading matches are read as the product does; count those whose
 * sentences the rules and lists were not made with in view.
 *
 * <pre>
 * TalkModelFit [REGEX]
 * </pre>
 */
public final class TalkModelFit {
  private static final int FOLDS = 6;
  private static final double[] LIMITS = {
    0.05, 0.08, 0.1, 0.12, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9
  };

  /**
   * @param recorded statements and facts that would be recorded of what no phrase covers whole
   * @param offered the same for those that would be offered
   * @param told whether it finds nothing, but tells facts or what was not examined
   * @param acts whether something would be asked or carried out
   */
  private record Case(
      boolean talk,
      boolean read,
      double chance,
      int recorded,
      int offered,
      boolean told,
      boolean acts) {}

  private static final UtteranceVerifier VERIFIER = UtteranceVerifier.standard();

  private TalkModelFit() {}

  /** The reading that is shipped, with what these authors say left out of what talk is told by. */
  public static SecondReading without(Predicate<String> heading) throws IOException {
    TypedText typed = Shipped.typed();
    TalkModel model =
        TalkModel.train(
            TalkModel.lines(typed::utterance).stream()
                .filter(line -> !heading.test(line.author()))
                .toList(),
            LayLexiconReader.shipped(Protocol.standard(), typed::words));
    return new OtherTalk(Shipped.tagger(), model::talk);
  }

  /** Such a reading, to which every sentence sounds like talk by this chance. */
  public static SecondReading like(SecondReading reading, double chance) {
    return new OtherTalk(reading, words -> chance);
  }

  /** Prints the tables. */
  public static void main(String[] args) throws IOException {
    Predicate<String> isRead = author -> args.length > 0 && author.matches(".*(" + args[0] + ").*");
    Interpreter unheld =
        new Interpreter(
            Shipped.network(), Protocol.standard(), new OtherTalk(Shipped.tagger(), words -> 0));
    List<Case> typed = new ArrayList<>();
    List<Case> unbroken = new ArrayList<>();
    for (int fold = 0; fold < FOLDS; fold++) {
      int out = fold;
      SecondReading reading = without(author -> fold(author) == out);
      for (TalkModel.Line line : TalkModel.lines(Shipped.typed()::utterance)) {
        if (fold(line.author()) == fold) {
          boolean read = isRead.test(line.author());
          typed.add(of(line.talk(), read, line.words(), reading, unheld));
          unbroken.add(of(line.talk(), read, TypedText.plain(line.words()), reading, unheld));
        }
      }
    }
    print("findings as typed", typed.stream().filter(one -> !one.told()).toList());
    print("told as typed", typed.stream().filter(Case::told).toList());
    print("findings without commas", unbroken.stream().filter(one -> !one.told()).toList());
    print("told without commas", unbroken.stream().filter(Case::told).toList());
  }

  private static int fold(String author) {
    return Math.floorMod(author.hashCode(), FOLDS);
  }

  private static Case of(
      boolean talk,
      boolean read,
      List<String> words,
      SecondReading reading,
      Interpreter interpreter) {
    double chance = reading.talk(words);
    if (!read) {
      return new Case(talk, false, chance, 0, 0, false, false);
    }
    Interpretation all = interpreter.interpret(words, Dialogue.START, Source.GRAMMAR);
    boolean phrase = all.uncovered().isEmpty() && all.certainties().isEmpty();
    int recorded = 0;
    int offered = 0;
    boolean acts = false;
    for (Interpretation part :
        all.isParted() ? List.of(all.certain(), all.doubtful()) : List.of(all)) {
      Outcome outcome = VERIFIER.decide(part, false).outcome();
      int said =
          (int)
              part.meanings().stream()
                  .filter(one -> one instanceof Meaning.States || one instanceof Meaning.Fact)
                  .count();
      recorded += outcome == Outcome.ACCEPTED ? said : 0;
      offered += outcome == Outcome.UNSURE ? said : 0;
      acts |=
          outcome == Outcome.COMMAND || outcome != Outcome.IGNORED && !part.questions().isEmpty();
    }
    boolean told = TalkLimits.findsNothing(all);
    return new Case(talk, !phrase, chance, recorded, offered, told, acts);
  }

  private static void print(String name, List<Case> cases) {
    System.out.println(name + ": limit, share of talk above it, of statements;");
    System.out.println(
        "  lines of talk below it that record, offer, ask; what is lost of statements, and lines of"
            + " statements above it that ask");
    for (double limit : LIMITS) {
      Predicate<Case> above = one -> one.chance() >= limit;
      System.out.printf(
          "%.2f %5.1f %% %5.2f %%  %d of %d, %d of %d, %d of %d  %d of %d recorded, %d of %d"
              + " offered, %d of %d%n",
          limit,
          100 * share(cases, Case::talk, above),
          100 * share(cases, one -> !one.talk(), above),
          lines(cases, one -> one.recorded() > 0, above.negate()),
          lines(cases, one -> one.recorded() > 0, one -> true),
          lines(cases, one -> one.offered() > 0, above.negate()),
          lines(cases, one -> one.offered() > 0, one -> true),
          lines(cases, Case::acts, above.negate()),
          lines(cases, Case::acts, one -> true),
          sum(cases, Case::recorded, above),
          sum(cases, Case::recorded, one -> true),
          sum(cases, Case::offered, above),
          sum(cases, Case::offered, one -> true),
          asking(cases, above),
          asking(cases, one -> true));
    }
  }

  private static double share(List<Case> cases, Predicate<Case> of, Predicate<Case> what) {
    return cases.stream().filter(of).filter(what).count()
        / (double) cases.stream().filter(of).count();
  }

  private static long lines(List<Case> cases, Predicate<Case> does, Predicate<Case> where) {
    return cases.stream()
        .filter(one -> one.talk() && one.read())
        .filter(does)
        .filter(where)
        .count();
  }

  private static long asking(List<Case> cases, Predicate<Case> where) {
    return cases.stream()
        .filter(one -> !one.talk() && one.read() && one.acts())
        .filter(where)
        .count();
  }

  private static int sum(List<Case> cases, ToIntFunction<Case> of, Predicate<Case> where) {
    return cases.stream().filter(one -> !one.talk() && one.read()).filter(where).mapToInt(of).sum();
  }
}
