package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tiptoe.language.SpokenNumber;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;

/** What stands between two breaks or joints of a sentence and speaks of one thing. */
final class ToldPart {
  static final Set<Kind> CARRY_NOTHING =
      EnumSet.of(Kind.EMPTY, Kind.CONTEXT, Kind.ORDER, Kind.JOINT);

  /**
   * A value or a number of a fact or a measured step.
   *
   * @param ordered whether a word says which of several readings it is
   */
  record Stated(
      String subject, String value, List<SpokenNumber> numbers, boolean ordered, boolean sure) {

    Stated unsure() {
      return new Stated(subject, value, numbers, ordered, false);
    }

    Stated denied(boolean surely) {
      return new Stated(subject, "no", List.of(), false, surely);
    }

    boolean says(Stated other) {
      return numbers.equals(other.numbers)
          && (value == null ? other.value == null : value.equals(other.value));
    }
  }

  final List<Item> items;

  /** Whether it puts right what was said before, and says nothing itself. */
  final boolean corrects;

  /** Whether a joint and no break stands before it. */
  final boolean joined;

  /** The words that nothing accounts for. */
  final Set<Integer> open = new TreeSet<>();

  boolean asked;
  boolean answers;

  /** Whether it also says what is found, so that its words are read again for that. */
  boolean finds;

  /** Whether it denies what it states. */
  boolean denied;

  /** Whether it holds an open word that may change what it states. */
  boolean altered;

  /** Whether what it stated was put right. */
  boolean replaced;

  /** Whether it is plain what it puts right. */
  boolean settled;

  private final List<Stated> stated = new ArrayList<>();
  private final Set<Integer> accounted = new TreeSet<>();

  ToldPart(List<Item> items, boolean corrects, boolean joined) {
    this.items = List.copyOf(items);
    this.corrects = corrects;
    this.joined = joined;
  }

  int from() {
    return items.get(0).from();
  }

  int to() {
    return items.get(items.size() - 1).to();
  }

  /** Its words. */
  List<String> of(List<String> words) {
    return words.subList(from(), to());
  }

  boolean has(Kind kind) {
    return items.stream().anyMatch(item -> item.kind() == kind);
  }

  boolean consistsOf(Set<Kind> kinds) {
    return items.stream().allMatch(item -> kinds.contains(item.kind()));
  }

  boolean isEmpty() {
    return consistsOf(CARRY_NOTHING);
  }

  List<Item> all(Kind kind) {
    return items.stream().filter(item -> item.kind() == kind).toList();
  }

  /** What it speaks of. */
  Stream<ToldLexicon.Sense> named() {
    return items.stream().filter(Item::isAbout).flatMap(Item::abouts);
  }

  /** Whether it names this. */
  boolean names(String subject) {
    return named().anyMatch(sense -> sense.subject().equals(subject));
  }

  /** Whether it names nothing that must be meant. */
  boolean namesNothing() {
    return named().allMatch(ToldLexicon.Sense::weak);
  }

  /** Whether it names nothing that must be meant beside this. */
  boolean namesNothingBut(Item item) {
    return items.stream()
        .filter(other -> other != item)
        .flatMap(Item::abouts)
        .allMatch(ToldLexicon.Sense::weak);
  }

  /** All that its words can be about. */
  Set<String> subjects() {
    Set<String> subjects = new LinkedHashSet<>();
    items.stream().flatMap(Item::senses).forEach(sense -> subjects.add(sense.subject()));
    return subjects;
  }

  List<Stated> stated() {
    return List.copyOf(stated);
  }

  boolean states() {
    return !stated.isEmpty();
  }

  boolean states(String subject) {
    return stated.stream().anyMatch(one -> one.subject().equals(subject));
  }

  /** Whether it states nothing though it has an item of this kind. */
  boolean leaves(Kind kind) {
    return !states() && has(kind);
  }

  void state(Stated one) {
    stated.add(one);
  }

  boolean accountsFor(int word) {
    return accounted.contains(word);
  }

  void account(int from, int to) {
    IntStream.range(from, to).forEach(accounted::add);
  }

  void account(Item item) {
    account(item.from(), item.to());
  }

  /** Accounts for all words of something that is spoken of. */
  void account(String subject) {
    items.stream()
        .filter(item -> item.senses().anyMatch(sense -> sense.subject().equals(subject)))
        .forEach(this::account);
  }

  void drop(Predicate<Stated> which) {
    stated.removeIf(which);
  }

  void doubt() {
    doubt(one -> true);
  }

  void doubt(Predicate<Stated> which) {
    stated.replaceAll(one -> which.test(one) ? one.unsure() : one);
  }

  /** Denies all that it states; the "or" of a list that is denied leaves nothing open. */
  void deny() {
    boolean sure =
        open.stream().allMatch(word -> all(Kind.OR).stream().anyMatch(item -> item.from() == word));
    stated.replaceAll(one -> one.denied(sure));
    denied = true;
  }
}
