package tiptoe.language.tagger;

import java.util.List;
import java.util.Optional;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Protocol;

/**
 * The words of a sentence, as they are asked for where facts and measurements are told.
 *
 * @param words with breaks
 * @param plain the same without their endings
 */
record ToldWords(ToldItems vocabulary, Protocol protocol, List<String> words, List<String> plain) {

  ToldWords(ToldItems vocabulary, Protocol protocol, List<String> words) {
    this(vocabulary, protocol, words, words.stream().map(ToldLexicon::plain).toList());
  }

  ToldWords of(List<String> other) {
    return new ToldWords(vocabulary, protocol, other);
  }

  ToldLexicon told() {
    return vocabulary.told();
  }

  LayLexicon lay() {
    return vocabulary.lay();
  }

  List<Item> items() {
    return vocabulary.of(words, plain);
  }

  List<ToldPart> parts() {
    return new ToldParts(this).all();
  }

  List<String> of(Item item) {
    return plain.subList(item.from(), item.to());
  }

  /** Whether the word at a place is of a list; none is behind the last one. */
  boolean isListed(String list, int at) {
    return at < plain.size() && told().isListed(list, plain.get(at));
  }

  /** Whether the word before a place is of a list, where it is not before {@code from}. */
  boolean isBehind(String list, int at, int from) {
    return at > from && isListed(list, at - 1);
  }

  /** Whether an item denies, be it a value of some things: "negative". */
  boolean isDenial(Item item) {
    return item.kind() == ToldItems.Kind.DENY
        || item.kind() == ToldItems.Kind.TOLD && told().isListed("deny", of(item));
  }

  /** Whether it is said that a number is not meant exactly. */
  boolean isRough(Item number) {
    return isBehind("roughly", number.from(), 0) || isBehind("nearby", number.from(), 0);
  }

  Optional<Fact> fact(String subject) {
    return protocol.fact(subject);
  }

  /** Whether it is handed on: consent, what was told, a referral. */
  boolean isHandover(String subject) {
    return fact(subject).filter(Fact::handover).isPresent();
  }
}
