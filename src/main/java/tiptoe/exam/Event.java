package tiptoe.exam;

import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.language.Meaning;

/**
 * Something that happened in an examination or its review. An event says what was decided, not only
 * what was said, so folding needs no clinical rule. Statements, questions, utterances and remarks
 * are numbered from 1, each by themselves. {@code author} is null where the clinician spoke.
 *
 * <p>In a journal the type of an event is the name of its record in kebab-case, so none is renamed.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
public sealed interface Event {
  /**
   * What it does to the record. It changes nothing where it refers to what is not there, since a
   * record must open whatever is in its journal.
   */
  void applyTo(Fold fold, Entry entry);

  /** What the tool notes of the sound, the journal or a remark: it needs no decision. */
  sealed interface Notice extends Event {}

  /** What a reviewer does, and what comes of it: so what an addendum may hold. */
  sealed interface Edit extends Event {}

  /**
   * The first event.
   *
   * @param id of the examination, unique on this machine
   * @param label the user's own words for it; may be null
   * @param protocol version of the protocol
   * @param tool version of the tool
   * @param author who examines; may be null
   * @param local the protocol of the ward, as its file said it, so that the record can be read
   *     without it; null where there is none
   */
  record ExaminationOpened(
      String id, String label, String protocol, String tool, String author, String local)
      implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.opened = this;
    }
  }

  /** It was taken up again, after a crash or a break. */
  record ExaminationContinued(String tool, String author) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.LISTENING;
      fold.ended = null;
      fold.note(entry, "the examination was continued");
    }
  }

  /** A fact about the baby; ids and values as in {@link Baby}. It replaces an older value. */
  record ContextStated(String fact, String value, Integer utterance, String author)
      implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.baby = fold.baby.with(fact, value);
    }
  }

  /**
   * Something was heard, or typed.
   *
   * @param candidates what an unsure utterance seems to say, for the reviewer
   * @param asks what it seems to say without a side, a limb or a possible number
   * @param facts what it seems to say of the baby
   * @param uncovered words no phrase covers
   * @param region id of the region the dialogue is in after it; null before the first
   */
  record UtteranceHeard(
      int number,
      Heard heard,
      List<Meaning.States> candidates,
      List<Meaning.Asks> asks,
      List<Meaning.Fact> facts,
      List<String> uncovered,
      String region)
      implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.region = region == null ? fold.region : region;
      fold.utterances.put(
          number,
          new Utterance(number, entry.at(), heard, candidates, asks, facts, uncovered, null));
    }
  }

  /**
   * A finding was stated.
   *
   * @param correction whether it was said to replace what stands
   * @param utterance where it was said; null when the reviewer made it
   * @param effect what it does to those before it
   * @param of the statements it replaces, confirms or contradicts
   */
  record StatementMade(
      int number,
      Finding statement,
      boolean correction,
      Integer utterance,
      Effect effect,
      List<Integer> of,
      String author)
      implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.statements.put(number, fold.recorded(this, entry.at(), Status.of(effect)));
      fold.settle(number, effect, of);
    }
  }

  /** A statement that waited was decided on. */
  record StatementSettled(int statement, Effect effect, List<Integer> of, String author)
      implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.settle(statement, effect, of);
    }
  }

  /**
   * A question was put in the queue.
   *
   * @param question its {@code about} is null when it is about the context alone
   * @param correction whether the finding it is about was said as a correction
   * @param statement the statement that waits for it; null when none does
   * @param against the statements that one contradicts
   * @param fact the fact that waits for it; null when none does
   * @param value the value of that fact
   */
  record QuestionAsked(
      int number,
      Question question,
      boolean correction,
      Integer utterance,
      Integer statement,
      List<Integer> against,
      String fact,
      String value)
      implements Edit {
    QuestionAsked withText(String text) {
      return new QuestionAsked(
          number, question.withText(text), correction, utterance, statement, against, fact, value);
    }

    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.questions.put(number, Asked.of(this, entry.at()));
    }
  }

  /** A question was answered, in these words. */
  record QuestionAnswered(int number, String answer, Integer utterance, String author)
      implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.close(number, answer);
    }
  }

  /** A question lost its point or was waved away. */
  record QuestionDropped(int number, String reason, String author) implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.close(number, reason);
    }
  }

  /**
   * The clinician took back all that an utterance had left.
   *
   * @param facts facts it changed, with the value they go back to
   * @param cleared facts it stated first
   */
  record Struck(
      int utterance,
      List<Integer> statements,
      List<Integer> questions,
      Map<String, String> facts,
      List<String> cleared)
      implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      statements.forEach(number -> fold.settle(number, Status.STRUCK));
      questions.forEach(number -> fold.close(number, "taken back"));
      facts.forEach((fact, before) -> fold.baby = fold.baby.with(fact, before));
      cleared.forEach(fact -> fold.baby = fold.baby.without(fact));
    }
  }

  record Paused(Integer utterance) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.PAUSED;
    }
  }

  record Resumed(Integer utterance) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.LISTENING;
    }
  }

  /** Sound was lost: from this second of the audio on, for this many seconds. */
  record AudioGap(double from, double seconds, String reason) implements Notice {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.gaps.add(new UnheardSound(from, seconds, reason));
    }
  }

  /** The journal ended in an unfinished line, which was moved to this file. */
  record TailSetAside(long bytes, String file) implements Notice {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.note(
          entry,
          "an unfinished line of %s bytes at the end of the journal was moved to %s"
              .formatted(bytes, file));
    }
  }

  /** The clock of the machine was set back behind the last event, which was at this time. */
  record ClockWentBack(Instant last) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.note(entry, "the clock went back: the event before was at " + last);
    }
  }

  /** A clinical rule applies. */
  record FlagRaised(RecordedFlag flag) implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.flags.add(new FlagHistory(flag, entry.at(), null));
    }
  }

  /** It does not any more. */
  record FlagCleared(RecordedFlag flag) implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.flags.replaceAll(
          raised ->
              raised.open() && raised.flag().equals(flag)
                  ? new FlagHistory(flag, raised.raised(), entry.at())
                  : raised);
    }
  }

  /** What is said from this second of the audio on is a remark. */
  record RemarkStarted(double start, Integer utterance) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.REMARK;
    }
  }

  /** A remark: the second it starts and ends at, the same when it was typed. */
  record RemarkMade(int number, String text, double start, double end, String author)
      implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = fold.phase == Phase.REMARK ? Phase.LISTENING : fold.phase;
      fold.remarks.put(
          number, new Remark(number, entry.at(), text, text, start, end, List.of(), author));
    }
  }

  /**
   * A remark was read again: better decoded, or edited.
   *
   * @param repairs words that were put in place of what sounds alike, in the order of the text
   */
  record RemarkReworded(int number, String text, List<Repair> repairs, String author)
      implements Notice, Edit {
    public RemarkReworded {
      repairs = repairs == null ? List.of() : List.copyOf(repairs);
    }

    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.remarks.computeIfPresent(number, (key, remark) -> remark.reworded(text, repairs));
    }
  }

  /**
   * The end was asked for while key steps are missing or something pressing is not settled; it
   * takes a second word.
   */
  record EndAsked(List<Slot> missing, Integer utterance) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.ENDING;
    }
  }

  /** The examination goes on after all. */
  record EndRefused(Integer utterance) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.LISTENING;
    }
  }

  /** The examination is over; these key steps are missing. */
  record Ended(List<Slot> missing, Integer utterance) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.ENDED;
      fold.ended = entry.at();
    }
  }

  record StatementRejected(int statement, String reason, String author) implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.settle(statement, Status.REJECTED);
    }
  }

  /**
   * What unsure utterances seem to say is read out, to be answered at once.
   *
   * @param by number of the utterance behind which it is; null when a key asked for it
   * @param beside the others, where several are read out together; null where it is one
   */
  record OfferAsked(int utterance, Integer by, List<Integer> beside) implements Event {
    /** All that are read out. */
    List<Integer> utterances() {
      return beside == null
          ? List.of(utterance)
          : Stream.concat(Stream.of(utterance), beside.stream()).toList();
    }

    static OfferAsked of(List<Utterance> all, Integer by) {
      List<Integer> beside = all.stream().skip(1).map(Utterance::number).toList();
      return new OfferAsked(all.get(0).number(), by, beside.isEmpty() ? null : beside);
    }

    @Override
    public void applyTo(Fold fold, Entry entry) {
      // The record finds it among its entries while it is what was asked last.
    }
  }

  /** The reviewer, or a yes or no, has dealt with an unsure or ignored utterance. */
  record UtteranceReviewed(int utterance, boolean accepted, String author) implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.utterances.computeIfPresent(utterance, (number, heard) -> heard.withReviewed(accepted));
    }
  }

  /** An edit of the reviewer was taken back: all its entries. */
  record Undone(List<Long> entries, String author) implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      // The fold has asked for it first: it decides which entries count at all.
    }
  }

  /** An edit that was undone counts again. */
  record Redone(List<Long> entries, String author) implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      // As with what was undone.
    }
  }

  /**
   * The record was signed: all entries before, by the chain, and the audio.
   *
   * @param audio file name to SHA-256 of every audio segment there is
   * @param time when it was signed, as it is in what is signed; null in records of earlier versions
   * @param key the signer's public key, Ed25519 (RFC 8410), in base64; null where only a name was
   *     given
   * @param signature over the {@link SignedStatement}, by that key; null where only a name was
   *     given
   */
  record Signed(
      String name,
      String role,
      Map<String, String> audio,
      Instant time,
      String key,
      String signature)
      implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.SIGNED;
      fold.signatures.add(Signature.of(fold.opened == null ? null : fold.opened.id(), entry, this));
    }
  }

  /** After it edits are allowed again, until the next signature. */
  record AddendumStarted(String reason, String author) implements Event {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.phase = Phase.ADDENDUM;
      fold.note(entry, "addendum by " + author);
    }
  }

  /**
   * A segment of sound is complete.
   *
   * @param file its name
   * @param samples how many it holds
   * @param sha256 of the file, in hexadecimal
   * @param found true where a break had left it, and it was found when the record was opened again;
   *     null else
   */
  record SegmentKept(String file, long samples, String sha256, Boolean found) implements Notice {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      // The sound is held against it; it says nothing of the baby.
      if (Boolean.TRUE.equals(found)) {
        fold.note(entry, "sound " + file + " was unfinished when the examination was broken off");
      }
    }
  }

  /** How long sound is kept was chosen for this record: never, until-signed or always. */
  record KeepAudioChosen(String choice) implements Notice {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      // Asked for when the record is signed; it says nothing of the baby.
    }
  }

  /**
   * Somebody says that what the plan asks for was done, or that it was not after all.
   *
   * @param item id of the item of the plan
   * @param what the item, for people, as it was then
   * @param note in their own words; may be null
   */
  record ItemTicked(String item, String what, boolean done, String note, String author)
      implements Edit {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      String how = note == null || note.isBlank() ? "done" : note;
      fold.ticked.put(item, new Handled(done, how, entry.at().toString(), author));
    }
  }

  /** The audio was removed, as the user had chosen. */
  record AudioRemoved(List<String> files, String reason) implements Notice {
    @Override
    public void applyTo(Fold fold, Entry entry) {
      fold.note(entry, files.size() + " audio segments were removed: " + reason);
    }
  }
}
