package tiptoe.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.Asked;
import tiptoe.exam.Changes;
import tiptoe.exam.Effect;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Heard;
import tiptoe.exam.Offer;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Slot;
import tiptoe.exam.Status;
import tiptoe.exam.Utterance;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.language.Meaning;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.speech.Hypothesis;

/**
 * What became of what was said last, for eyes and ears alike.
 *
 * @param kind of all of it, the one that matters most
 * @param heard the words, with an ellipsis for other speech; empty where a key was pressed
 * @param lines what it did, one thing each
 */
public record OutcomeWording(Kind kind, String heard, List<Line> lines) {
  /** Of a command that left the record as it was. */
  private static final String NOTHING_CHANGED = "NOTHING CHANGED";

  /** So few words of phrases are found in any conversation, and are no attempt to dictate. */
  private static final int CHANCE_WORDS = 1;

  private static final String UNSURE = "UNSURE, NOT RECORDED:";

  /** What can be said to several that are read out together. */
  private static final String TOGETHER = "\"yes to all\", \"not the second\", or no?";

  public OutcomeWording {
    lines = List.copyOf(lines);
  }

  /** What an utterance can come to, what matters least first. */
  public enum Kind {
    /** Not meant for the record: nothing is to be shown or heard of it. */
    TALK,
    /** An instruction was carried out. */
    DONE,
    /** A finding, a fact or a heading was taken down. */
    RECORDED,
    /** Phrases that are neither recorded nor offered. */
    NOT_UNDERSTOOD,
    /** Not recorded: it waits for a yes or for the reviewer. */
    OFFERED,
    ASKED
  }

  /**
   * One thing that was done.
   *
   * @param sign what it comes to
   * @param label in capitals, such as {@code RECORDED}
   * @param text what it is about; may be empty
   */
  public record Line(Sign sign, String label, String text) {
    /** Whether it is offered and waits for an answer, or is one of several that are. */
    public boolean isOffer() {
      return label.equals(UNSURE) || Character.isDigit(label.charAt(0));
    }

    public String shown() {
      return text.isEmpty() ? label : label + " " + text;
    }
  }

  /** What is offered and waits for an answer. */
  public List<Line> offers() {
    return lines.stream().filter(Line::isOffer).toList();
  }

  /** The same where it was answered: it is not what a command left alone that was asked for. */
  public OutcomeWording answered() {
    return new OutcomeWording(
        kind,
        heard,
        lines.stream()
            .map(
                line ->
                    line.label().equals(NOTHING_CHANGED)
                        ? new Line(line.sign(), "ANSWERED", line.text())
                        : line)
            .toList());
  }

  /** What one step of the examination did. */
  public static OutcomeWording of(Changes changes, Words words) {
    return new Maker(changes.record(), words).of(changes.entries());
  }

  /** What became of the last utterance that was not talk; empty before the first. */
  public static Optional<OutcomeWording> last(ExamRecord record, Words words) {
    return last(record, words, heard -> !isTalk(heard));
  }

  /** The same of the last that was no command either, without what commands did behind it. */
  static Optional<OutcomeWording> lastSaid(ExamRecord record, Words words) {
    return last(record, words, heard -> !isTalk(heard) && heard.outcome() != Outcome.COMMAND);
  }

  private static Optional<OutcomeWording> last(
      ExamRecord record, Words words, Predicate<Heard> wanted) {
    List<Entry> entries = record.entries();
    int to = entries.size();
    for (int i = entries.size() - 1; i >= 0; i--) {
      if (entries.get(i).event() instanceof Event.UtteranceHeard heard) {
        if (wanted.test(heard.heard())) {
          return Optional.of(new Maker(record, words).of(entries.subList(i, to)));
        }
        to = heard.heard().outcome() == Outcome.COMMAND ? i : to;
      }
    }
    return Optional.empty();
  }

  /**
   * Whether ignored speech is left alone without a word: it held no phrases or next to none, or a
   * yes or no that nothing had asked for.
   */
  public static boolean isTalk(Heard heard) {
    long phraseWords =
        Stream.of(heard.text().split(" "))
            .filter(word -> !word.isBlank() && !word.equals(Hypothesis.FILLER))
            .count();
    return heard.outcome() == Outcome.IGNORED && phraseWords <= CHANCE_WORDS;
  }

  private static final class Maker {
    private final ExamRecord record;
    private final Words words;
    private final List<Line> lines = new ArrayList<>();
    private Kind kind = Kind.TALK;
    private String text = "";
    private boolean counts;
    private boolean asks;

    Maker(ExamRecord record, Words words) {
      this.record = record;
      this.words = words;
    }

    OutcomeWording of(List<Entry> entries) {
      entries.stream().map(Entry::event).forEach(this::take);
      if (lines.isEmpty() && counts) {
        lines.add(
            asks
                ? new Line(Sign.UNSURE, "NOT RECORDED YET", "")
                : new Line(Sign.DONE, kind == Kind.DONE ? NOTHING_CHANGED : "NOTED", ""));
      }
      return new OutcomeWording(kind, text, lines);
    }

    private void add(Kind what, Sign sign, String label, String about) {
      raise(what);
      lines.add(new Line(sign, label, about));
    }

    /** What is the same on both sides is one line; else right stands before left, as in tables. */
    private void recorded(String label, Finding finding) {
      Line line = new Line(Sign.DONE, label, words.of(finding));
      raise(Kind.RECORDED);
      if (finding.side() != null) {
        Side other = finding.side() == Side.LEFT ? Side.RIGHT : Side.LEFT;
        Finding across = finding.withSide(other);
        int same = lines.indexOf(new Line(Sign.DONE, label, words.of(across)));
        if (same >= 0) {
          lines.set(same, new Line(Sign.DONE, label, words.onBothSides(finding)));
          return;
        }
        String name = words.name(finding.step(), other) + ": ";
        int last = lines.size() - 1;
        if (finding.side() == Side.RIGHT && last >= 0 && lines.get(last).text().startsWith(name)) {
          lines.add(last, line);
          return;
        }
      }
      lines.add(line);
    }

    private void raise(Kind what) {
      kind = what.compareTo(kind) > 0 ? what : kind;
    }

    private void take(Event event) {
      if (event instanceof Event.UtteranceHeard heard) {
        heard(heard);
      } else if (event instanceof Event.StatementMade made) {
        record.statement(made.number()).ifPresent(this::stated);
      } else if (event instanceof Event.StatementSettled settled) {
        record.statement(settled.statement()).ifPresent(said -> settled(said, settled.effect()));
      } else if (event instanceof Event.ContextStated fact) {
        add(Kind.RECORDED, Sign.DONE, "NOTED", words.stated(fact.fact(), fact.value()));
      } else if (event instanceof Event.QuestionAsked asked) {
        asks |= record.openQuestions().stream().anyMatch(one -> one.number() == asked.number());
        raise(asks ? Kind.ASKED : Kind.TALK);
      } else if (event instanceof Event.Struck struck) {
        add(Kind.DONE, Sign.SKIPPED, "CROSSED OUT", struck(struck));
      } else if (event instanceof Event.UtteranceReviewed reviewed) {
        record.utterance(reviewed.utterance()).ifPresent(this::leftOut);
      } else if (event instanceof Event.OfferAsked) {
        record.toConfirm().ifPresent(this::readOut);
      } else {
        phase(event);
      }
    }

    private void phase(Event event) {
      if (event instanceof Event.Paused) {
        add(Kind.DONE, Sign.DONE, "PAUSED", "");
      } else if (event instanceof Event.Resumed) {
        add(Kind.DONE, Sign.DONE, "LISTENING", "again");
      } else if (event instanceof Event.RemarkStarted) {
        add(Kind.DONE, Sign.DONE, "REMARK", "begins");
      } else if (event instanceof Event.RemarkMade) {
        add(Kind.DONE, Sign.DONE, "REMARK", "kept");
      } else if (event instanceof Event.EndAsked) {
        add(Kind.ASKED, Sign.UNSURE, "NOT ENDED YET", "");
      } else if (event instanceof Event.EndRefused) {
        add(Kind.DONE, Sign.DONE, "GOING ON", "");
      } else if (event instanceof Event.Ended) {
        add(Kind.DONE, Sign.DONE, "ENDED", "");
      }
    }

    private void heard(Event.UtteranceHeard event) {
      Heard heard = event.heard();
      if (text.isEmpty() || !isTalk(heard)) {
        text = heard.text().replace(Hypothesis.FILLER, "…").strip();
      }
      Utterance utterance = record.utterance(event.number()).orElseThrow();
      switch (heard.outcome()) {
        case ACCEPTED -> {
          counts = true;
          raise(Kind.RECORDED);
        }
        case COMMAND -> {
          counts = true;
          raise(Kind.DONE);
          moved(event).ifPresent(region -> add(Kind.DONE, Sign.DONE, "NOW", region));
        }
        case UNSURE -> unsure(utterance);
        case REMARK -> lines.add(new Line(Sign.DONE, "PART", "of the remark"));
        case IGNORED -> {
          if (!isTalk(heard)) {
            add(Kind.NOT_UNDERSTOOD, Sign.UNSURE, "NOT UNDERSTOOD", "");
          }
        }
      }
    }

    private void unsure(Utterance utterance) {
      if (utterance.offered().isEmpty()) {
        String words = String.join(" ", utterance.uncovered());
        add(
            Kind.NOT_UNDERSTOOD,
            Sign.UNSURE,
            "NOT UNDERSTOOD",
            words.isEmpty() ? "" : "“" + words + "”");
      } else {
        offered(utterance);
      }
    }

    private void offered(Utterance utterance) {
      Optional<Offer> now =
          record.toConfirm().filter(offer -> offer.utterances().contains(utterance));
      if (now.filter(offer -> offer.way() == Offer.Way.TOGETHER).isPresent()) {
        raise(Kind.OFFERED); // it is read out with the others
        return;
      }
      boolean asked = now.filter(offer -> offer.way() == Offer.Way.ALONE).isPresent();
      String answers = utterance.offered().size() > 1 ? " yes, no, or only which?" : " yes or no?";
      add(
          Kind.OFFERED,
          Sign.UNSURE,
          UNSURE,
          "(" + words.seems(utterance.offered()) + ")" + (asked ? answers : ""));
    }

    private void readOut(Offer offer) {
      if (offer.way() == Offer.Way.ALONE) {
        offered(offer.utterances().get(0));
      } else if (offer.way() == Offer.Way.TOGETHER) {
        add(Kind.OFFERED, Sign.UNSURE, UNSURE, TOGETHER);
        List<String> parts = CommandReply.numbered(offer, words);
        parts.forEach(part -> lines.add(new Line(Sign.UNSURE, part, "")));
      }
    }

    // All of an offer that was declined, or what of it was not picked.
    private void leftOut(Utterance utterance) {
      List<Meaning> left =
          utterance.offered().stream().filter(offer -> !isTaken(offer, utterance)).toList();
      if (!left.isEmpty()) {
        add(Kind.DONE, Sign.SKIPPED, "LEFT OUT", words.seems(left));
      }
    }

    private boolean isTaken(Meaning offer, Utterance utterance) {
      if (offer instanceof Meaning.Fact fact) {
        return record.baby().is(fact.id(), fact.value())
            || record.openQuestions().stream().anyMatch(asked -> fact.id().equals(asked.fact()));
      }
      return offer instanceof Meaning.Asks asks
          ? record.questions().stream()
              .filter(asked -> Objects.equals(asked.utterance(), utterance.number()))
              .anyMatch(asked -> asked.question().equals(asks.question()))
          : record.statements().stream()
              .filter(said -> Objects.equals(said.utterance(), utterance.number()))
              .anyMatch(said -> said.slot().equals(slot(offer.findings().get(0))));
    }

    private static Slot slot(Finding finding) {
      return new Slot(finding.step(), finding.side());
    }

    /** The region that a command went to; empty where it stayed. */
    private Optional<String> moved(Event.UtteranceHeard event) {
      String before =
          record
              .events(Event.UtteranceHeard.class)
              .filter(one -> one.number() < event.number() && one.region() != null)
              .map(Event.UtteranceHeard::region)
              .reduce((first, last) -> last)
              .orElse("");
      return Optional.ofNullable(event.region())
          .filter(region -> !region.equals(before))
          .flatMap(record.protocol()::region)
          .map(this::name);
    }

    private String name(Region region) {
      return words.region(region).toLowerCase(Locale.ROOT);
    }

    private void stated(RecordedFinding said) {
      String what = words.of(said.statement());
      switch (said.status()) {
        case STANDS -> recorded("RECORDED", said.statement());
        case CONFIRMS -> recorded("AGAIN", said.statement());
        case WAITS -> add(Kind.ASKED, Sign.UNSURE, "NOT RECORDED YET", what);
        default -> add(Kind.RECORDED, Sign.SKIPPED, label(said.status()), what);
      }
    }

    private void settled(RecordedFinding said, Effect effect) {
      String what = words.of(said.statement());
      switch (effect) {
        case STANDS -> recorded("RECORDED", said.statement());
        case CONFIRMS -> recorded("AGAIN", said.statement());
        default -> add(Kind.DONE, Sign.SKIPPED, "LEFT OUT", what);
      }
    }

    private static String label(Status status) {
      return status.id().toUpperCase(Locale.ROOT);
    }

    private String struck(Event.Struck struck) {
      Stream<String> statements =
          words
              .together(
                  struck.statements().stream()
                      .flatMap(number -> record.statement(number).stream())
                      .map(RecordedFinding::statement)
                      .toList())
              .stream();
      Stream<String> questions =
          record.questions().stream()
              .filter(asked -> asked.statement() == null)
              .filter(asked -> struck.questions().contains(asked.number()))
              .map(Asked::question)
              .filter(question -> question.about() != null)
              .map(question -> words.of(question.about()));
      Stream<String> facts =
          Stream.concat(struck.facts().keySet().stream(), struck.cleared().stream())
              .map(words::label);
      return Stream.of(statements, questions, facts)
          .flatMap(one -> one)
          .distinct()
          .collect(Collectors.joining("; "));
    }
  }
}
