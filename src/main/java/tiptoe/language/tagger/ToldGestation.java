package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tiptoe.language.SpokenNumber;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldPart.Stated;

/**
 * Reads the weeks and days of pregnancy at birth: "thirty nine plus two", "thirty nine weeks and
 * two days", "term plus three", "thirty nine and two".
 */
final class ToldGestation {
  static final String SUBJECT = "gestation";
  private static final int TERM = 40;
  private static final int MOST_DAYS_PAST_TERM = 14;

  /** What the numbers of a part are. */
  enum Found {
    NONE,
    /** When something else was. */
    TIME,
    STATED
  }

  /** Weeks, with days or without, and the words that say them. */
  private record Weeks(List<SpokenNumber> said, int from, int to, boolean sure) {}

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final List<String> plain;
  private final ToldMeasures measures;

  /** Whether the sentence speaks of the birth. */
  private final boolean birth;

  ToldGestation(ToldWords sentence, ToldMeasures measures) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.plain = sentence.plain();
    this.measures = measures;
    this.birth =
        told.matches(plain).stream()
            .flatMap(match -> match.of(ToldLexicon.Kind.VALUE).stream())
            .anyMatch(sense -> told.isSubjectListed("told-of-birth", sense.subject()));
  }

  /**
   * Lets a part state them.
   *
   * @param numbers of the part, at least one
   * @param alone whether it names nothing else that is measured
   * @param carried what was spoken of before
   */
  Found read(ToldPart part, List<Item> numbers, boolean alone, Set<String> carried) {
    Item first = numbers.get(0);
    if (numbers.size() == 1 && isPastTerm(first)) {
      int days = (int) ToldItems.value(first.numbers().get(0));
      List<SpokenNumber> said = List.of(number(TERM + days / 7, "weeks"), number(days % 7, "days"));
      return state(part, new Weeks(said, first.from() - 2, first.to(), true));
    }
    List<SpokenNumber> said = new ArrayList<>(first.numbers());
    int to = first.to();
    boolean plus = false;
    boolean and = false;
    boolean weeks = "weeks".equals(said.get(0).unit());
    if (said.size() == 1 && numbers.size() > 1) {
      Item second = numbers.get(1);
      SpokenNumber days = second.numbers().get(0);
      List<String> between = plain.subList(first.to(), second.from());
      plus = told.isListed("weeks-plus-days", between);
      and = told.isListed("weeks-and-days", between);
      if (between.isEmpty() || and || plus) {
        // "Thirty six and five weeks"
        boolean behind = !weeks && said.get(0).unit() == null && "weeks".equals(days.unit());
        weeks |= behind;
        said.add(behind ? new SpokenNumber(null, days.words(), null, null) : days);
        to = second.to();
      }
    }
    boolean named =
        part.named().anyMatch(sense -> sense.subject().equals(SUBJECT))
            || carried.contains(SUBJECT) && part.namesNothing();
    boolean all = said.size() == numbers.stream().mapToInt(n -> n.numbers().size()).sum();
    // "Thirty nine and two" by itself: surely where the birth is spoken of.
    boolean bare = and && carried.stream().noneMatch(measures::isMeasured);
    if (!isWeeksAndDays(said) || !alone || !all || !(named || plus || weeks || bare)) {
      return Found.NONE;
    }
    if (isThen(part, first) || sentence.isListed("scan", to)) {
      if (part.states() && part.stated().stream().allMatch(one -> isOfPregnancy(one.subject()))) {
        part.account(first.from() - 1, to);
      }
      return Found.TIME;
    }
    // "At thirty eight weeks" by itself: what was?
    boolean then = isBehindThen(part, first) && !told.says("born", plain);
    boolean sure = !sentence.isRough(first) && (named || plus || weeks && !then || birth);
    return state(part, new Weeks(said, first.from(), to, sure));
  }

  private boolean isPastTerm(Item number) {
    return number.from() > 1
        && told.isListed("past-term", plain.subList(number.from() - 2, number.from()))
        && isBetween(0, MOST_DAYS_PAST_TERM, number.numbers().get(0));
  }

  private static Found state(ToldPart part, Weeks weeks) {
    part.state(new Stated(SUBJECT, null, weeks.said(), false, weeks.sure()));
    part.account(weeks.from(), weeks.to());
    part.account(SUBJECT);
    return Found.STATED;
  }

  // "At thirty two weeks the renal pelvis was dilated": when that was, and not the birth.
  private boolean isThen(ToldPart part, Item weeks) {
    boolean born = told.says("born", part.of(plain)) || part.items.stream().anyMatch(this::isBirth);
    return isBehindThen(part, weeks)
        && !born
        && (part.items.stream().anyMatch(this::isOfElse) || told.says("lay-otherwise", plain));
  }

  private boolean isBehindThen(ToldPart part, Item weeks) {
    return sentence.isBehind("then", weeks.from(), part.from());
  }

  private boolean isBirth(Item item) {
    return item.senses()
        .anyMatch(sense -> sense.subject().equals(SUBJECT) || sense.subject().equals("birth-mode"));
  }

  private boolean isOfElse(Item item) {
    return switch (item.kind()) {
      case FINDING, UNKNOWN, DENY, UNASSERTED -> true;
      case TOLD ->
          !told.isListed("weeks-plus-days", sentence.of(item))
              && item.senses().noneMatch(sense -> told.isSubjectListed("of-now", sense.subject()));
      default -> false;
    };
  }

  private boolean isOfPregnancy(String subject) {
    return subject.startsWith("antenatal-")
        || subject.startsWith("maternal-")
        || told.isSubjectListed("of-pregnancy", subject);
  }

  private static boolean isWeeksAndDays(List<SpokenNumber> said) {
    SpokenNumber weeks = said.get(0);
    boolean days =
        said.size() == 1
            || isBetween(0, 6, said.get(1))
                && (said.get(1).unit() == null || said.get(1).unit().equals("days"));
    return days
        && isBetween(22, 44, weeks)
        && weeks.bound() == null
        && ToldItems.value(weeks) == Math.floor(ToldItems.value(weeks));
  }

  /** Whether a number lies between two, both included. */
  static boolean isBetween(int least, int most, SpokenNumber number) {
    double value = ToldItems.value(number);
    return least <= value && value <= most;
  }

  private static SpokenNumber number(int value, String unit) {
    return new SpokenNumber(null, TypedText.spoken(String.valueOf(value)), unit, null);
  }
}
