package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tiptoe.language.NumberWords;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;

/** Parts a sentence at its breaks, at what puts something right, and where a joint begins anew. */
final class ToldParts {
  private final ToldWords sentence;
  private final ToldLexicon told;
  private final Breaks breaks;
  private final Corrections corrections;
  private final List<String> plain;
  private final List<Item> items;
  private final List<ToldPart> parts = new ArrayList<>();
  private List<Item> now = new ArrayList<>();
  private boolean joined;

  ToldParts(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.breaks = new Breaks(sentence.words());
    this.corrections = new Corrections(sentence.lay());
    this.plain = sentence.plain();
    this.items = sentence.items();
  }

  List<ToldPart> all() {
    for (int i = 0; i < items.size(); i++) {
      Item item = items.get(i);
      int behind = corrections.end(breaks, item.from(), this::isTold);
      if (behind > item.from()) {
        close(false);
        int from = i;
        while (i + 1 < items.size() && items.get(i + 1).from() < behind) {
          i++;
        }
        parts.add(new ToldPart(items.subList(from, i + 1), true, false));
      } else if (breaks.at(item.from())) {
        close(false);
      } else {
        if (item.kind() == Kind.JOINT
            && sentence.isListed("speaker-begins", item.to())
            && !sentence.isListed("would", item.to() + 1)) {
          // "There is an eye problem in the family and we look carefully"
          close(false);
        } else if (item.kind() == Kind.JOINT && beginsAnew(i) || tellsAge(i)) {
          close(true);
        }
        now.add(item);
      }
    }
    close(false);
    return parts;
  }

  private void close(boolean nextIsJoined) {
    if (!now.isEmpty()) {
      parts.add(new ToldPart(now, false, joined));
    }
    now = new ArrayList<>();
    joined = nextIsJoined;
  }

  // Whether a number or something told begins here.
  private boolean isTold(int word) {
    return !NumberWords.readings(plain.subList(word, word + 1)).isEmpty()
        || told.matches(plain).stream()
            .filter(match -> match.from() == word)
            .anyMatch(match -> !match.of(ToldLexicon.Kind.VALUE).isEmpty());
  }

  private boolean beginsAnew(int joint) {
    if (joinsPeople(items.get(joint).from()) || joinsWeeksAndDays(joint)) {
      return false;
    }
    boolean says = now.stream().anyMatch(item -> tells(item) || item.kind() == Kind.NUMBER);
    if (!says && now.stream().anyMatch(item -> item.kind() == Kind.FINDING)) {
      return tellsOnly(joint);
    }
    List<Item> behind =
        items.subList(joint + 1, items.size()).stream()
            .takeWhile(item -> !breaks.at(item.from()) && item.kind() != Kind.JOINT)
            .toList();
    // "Three thousand two hundred today and three thousand four hundred when he was born"
    if (now.stream().anyMatch(ToldParts::weighs) && behind.stream().anyMatch(ToldParts::weighs)) {
      return true;
    }
    boolean more = behind.stream().anyMatch(item -> tells(item) || item.kind() == Kind.FINDING);
    return says && (more || !sentence.isListed("plain-joint", items.get(joint).from()));
  }

  // "No wet nappy yet at twenty six hours old"
  private boolean tellsAge(int at) {
    return sentence.isListed("at-time", items.get(at).from())
        && at + 2 < items.size()
        && items.get(at + 1).kind() == Kind.NUMBER
        && items.get(at + 2).abouts().anyMatch(sense -> sense.subject().equals("age"))
        && now.stream().anyMatch(item -> item.kind() == Kind.FINDING)
        && now.stream().noneMatch(item -> tells(item) || item.kind() == Kind.NUMBER);
  }

  // "Fontanelle's sunken and this baby's refusing every feed", "no poo and she's thirty hours"
  private boolean tellsOnly(int joint) {
    List<Item> behind =
        items.subList(joint + 1, items.size()).stream()
            .takeWhile(item -> !breaks.at(item.from()) && item.kind() != Kind.JOINT)
            .toList();
    return behind.stream().anyMatch(item -> item.isFreeValue() || isTime(item))
        && behind.stream()
            .allMatch(
                item -> item.kind() == Kind.TOLD || item.kind() == Kind.EMPTY || isTime(item));
  }

  private static boolean isTime(Item item) {
    return item.kind() == Kind.NUMBER
        && Set.of("h", "days").contains(String.valueOf(item.numbers().get(0).unit()));
  }

  private static boolean weighs(Item item) {
    return item.kind() == Kind.NUMBER && ToldNumbers.isWeight(item.numbers().get(0));
  }

  private static boolean tells(Item item) {
    return item.isAbout() || item.isFreeValue();
  }

  // "Told mummy and daddy about the hips"
  private boolean joinsPeople(int joint) {
    return sentence.isBehind("near", joint, 0) && sentence.isListed("near", joint + 1);
  }

  // "Thirty eight and four by dates"
  private boolean joinsWeeksAndDays(int joint) {
    return joint > 0
        && joint + 1 < items.size()
        && isBetween(22, 44, items.get(joint - 1))
        && isBetween(0, 6, items.get(joint + 1));
  }

  private static boolean isBetween(int least, int most, Item item) {
    return item.kind() == Kind.NUMBER
        && ToldGestation.isBetween(least, most, item.numbers().get(0));
  }
}
