package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tiptoe.language.SecondReading.Told;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.protocol.Step;

/**
 * Reads facts about the baby and measurements in a sentence. It is parted where something else is
 * spoken of; each part is told only where every word of it is accounted for. Two values of one
 * thing without a plain correction count for nothing.
 */
final class ToldReader {
  private static final int LONG_TERM = 5;
  private static final String KNOWN = "";

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final List<String> words;
  private final List<String> plain;
  private final ToldElsewhere elsewhere;
  private final ToldQuestions questions;
  private final ToldValues values;
  private final ToldNumbers numbers;
  private final ToldAccount account;
  private final ToldTopic topic;
  private final Set<String> contested = new TreeSet<>();

  /** What is told of another here, so that nothing else may read it as the baby's. */
  private final Set<String> unread = new TreeSet<>();

  ToldReader(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.words = sentence.words();
    this.plain = sentence.plain();
    this.elsewhere = new ToldElsewhere(sentence);
    this.questions = new ToldQuestions(sentence);
    this.values = new ToldValues(sentence);
    this.numbers = new ToldNumbers(sentence);
    this.account = new ToldAccount(sentence);
    this.topic = new ToldTopic(sentence);
  }

  Told read() {
    LayLexicon lay = sentence.lay();
    Talk talk = new Talk(lay, words);
    if (words.contains(TypedText.ASKS)
        || new Talk(lay, unread()).asksOrRecalls()
        || lay.says("supposes", unread())
        || told.says("example", plain)) {
      return Told.NOTHING;
    }
    if (elsewhere.isOfStranger()) {
      return new Told(List.of(), words, List.of(), measuredSteps(), false);
    }
    Optional<ToldApgars.Row> apgars = new ToldApgars(told, words).row().filter(this::standsAlone);
    if (apgars.isPresent()) {
      return withApgars(apgars.get());
    }
    List<ToldPart> parts = sentence.parts();
    // "She had her antibiotics, did she"
    if (parts.isEmpty() || told.isListed("tag", parts.get(parts.size() - 1).of(plain))) {
      return Told.NOTHING;
    }
    if (elsewhere.consentsToAnother()) {
      contested.addAll(ToldElsewhere.CONSENT);
    }
    for (int i = 0; i < parts.size(); i++) {
      if (!parts.get(i).corrects) {
        read(parts, i);
      }
    }
    if (talk.isToParent()) {
      // "You're o negative, mam": of her, and not of the baby.
      parts.forEach(
          part ->
              part.drop(
                  one -> !told.isOfMother(one.subject()) && !sentence.isHandover(one.subject())));
    }
    new ToldLists(sentence, parts).share();
    unread.addAll(elsewhere.dropOthers(parts));
    Told all = new ToldSentence(sentence, parts, contested).told();
    Set<String> said = all.said().stream().map(Told.Said::subject).collect(Collectors.toSet());
    unread.removeAll(said);
    if (said.contains("birth-weight") && !said.contains("weight")) {
      // "Came out at seven pounds, so that's three thousand two hundred grams"
      unread.add("weight");
    }
    unread.addAll(all.contested());
    return new Told(all.said(), all.rest(), all.open(), unread, all.shared());
  }

  // "His brother had", "make sure", "maybe" before it: not known to be of this baby.
  private boolean standsAlone(ToldApgars.Row row) {
    Breaks breaks = new Breaks(words);
    int from = breaks.from(row.from());
    int to = row.to() < words.size() ? breaks.to(row.to()) : row.to();
    return !told.says("near", plain.subList(from, to))
        && sentence.items().stream()
            .filter(item -> from <= item.from() && item.to() <= to)
            .filter(item -> item.to() <= row.from() || row.to() <= item.from())
            .allMatch(
                item ->
                    ToldTopic.NAMES_NOTHING.contains(item.kind())
                        || item.kind() == Kind.TOLD && !item.isAbout() && !item.isFreeValue());
  }

  // The row by itself, and what is told around it; a correction beside it may be of a score.
  private Told withApgars(ToldApgars.Row row) {
    List<String> around = new ArrayList<>(words.subList(0, row.from()));
    if (row.from() > 0 && row.to() < words.size()) {
      around.add(TypedText.BREAK);
    }
    around.addAll(words.subList(row.to(), words.size()));
    ToldWords without = sentence.of(around);
    boolean corrected = without.parts().stream().anyMatch(part -> part.corrects);
    Told rest = new ToldReader(without).read();
    List<Told.Said> all = new ArrayList<>(rest.said());
    row.scores()
        .forEach((step, score) -> all.add(new Told.Said(step, null, List.of(score), !corrected)));
    return new Told(all, rest.rest(), rest.open(), rest.contested(), rest.shared());
  }

  // Without what is surely told: "no risk factors for jaundice harming the brain" is not read out.
  private List<String> unread() {
    List<String> left = new ArrayList<>(words);
    told.matches(plain).stream()
        .filter(match -> match.to() - match.from() >= LONG_TERM)
        .filter(match -> !match.of(ToldLexicon.Kind.VALUE).isEmpty())
        .forEach(match -> left.subList(match.from() + 1, match.to()).replaceAll(word -> KNOWN));
    told.of("idle-if", plain).forEach(at -> left.set(at, KNOWN));
    left.removeIf(KNOWN::equals);
    return left;
  }

  private Set<String> measuredSteps() {
    return sentence
        .protocol()
        .steps()
        .filter(Step::isMeasured)
        .map(Step::id)
        .collect(Collectors.toSet());
  }

  private void read(List<ToldPart> parts, int index) {
    ToldPart part = parts.get(index);
    ToldPart next = index + 1 < parts.size() ? parts.get(index + 1) : null;
    if (questions.announces(part)) {
      topic.remember(part);
      return;
    }
    part.asked = part.joined && parts.get(index - 1).asked || questions.isAsked(part);
    Optional<Boolean> answer =
        part.asked && next != null ? questions.answer(next) : Optional.empty();
    if (part.asked && answer.isEmpty() && !ToldQuestions.isTag(part)) {
      topic.forget();
      return;
    }
    boolean none =
        next != null
            && !part.asked
            && questions.isLabel(part)
            && questions.isNone(next)
            && !questions.saysAgain(part, next);
    if (none) {
      answer = Optional.of(false);
      parts.subList(index + 1, parts.size()).stream()
          .takeWhile(questions::isNone)
          .forEach(denial -> denial.answers = true);
    } else if (answer.isPresent()) {
      next.answers = true;
    }
    unread.addAll(values.read(part, answer, topic.subjects()));
    if (none && !part.states()) {
      values.denyNamed(part);
    }
    if (none && told.isListed("bare-no", next.of(plain))) {
      // "Chorioamnionitis, no" may take it back.
      part.doubt();
    }
    unread.addAll(numbers.read(part, topic.subjects(), topic.isOfNumber()));
    dropOthers(part);
    // "You're going to do great at nursing": how it feeds now is not told.
    if (told.says("to-come", part.of(plain))) {
      part.drop(one -> told.isListed("now-only", one.subject()));
    }
    if (elsewhere.wasBreechBefore()) {
      part.drop(
          one -> one.subject().equals("presentation") && ToldElsewhere.BREECH.equals(one.value()));
      unread.add("presentation");
    }
    if (part.joined && parts.get(index - 1).leaves(Kind.DENY)) {
      // "No one in the family with bad hips"
      part.stated().stream()
          .filter(one -> "yes".equals(one.value()))
          .forEach(one -> contested.add(one.subject()));
    }
    if (!part.states()) {
      topic.remember(part);
      return;
    }
    Set<String> subjects = new LinkedHashSet<>();
    part.stated().forEach(one -> subjects.add(one.subject()));
    contested.addAll(account.account(part, subjects));
    part.named().forEach(sense -> subjects.add(sense.subject()));
    if (ToldElsewhere.CONSENT.containsAll(subjects)) {
      // "Consent, verbal, given by mum"
      subjects.addAll(ToldElsewhere.CONSENT);
    }
    topic.take(subjects);
  }

  // "Mum's pulse is ninety", "dad was a twin"
  private void dropOthers(ToldPart part) {
    ToldOwner owners = new ToldOwner(sentence);
    owners
        .of(part)
        .ifPresent(
            owner -> {
              part.stated().stream()
                  .filter(one -> !owners.mayBe(owner, one))
                  .forEach(one -> unread.add(one.subject()));
              if (unread.contains("birth-weight")) {
                unread.add("weight");
              }
              part.drop(one -> !owners.mayBe(owner, one));
            });
  }
}
