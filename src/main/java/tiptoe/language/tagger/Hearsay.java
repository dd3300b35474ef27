package tiptoe.language.tagger;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tiptoe.language.SecondReading.Claim;

/**
 * Finds what others report of the baby: "mum noticed a clicky hip", "a murmur according to the
 * midwife". Nobody examined it, so that it is no finding (the source of what is told: Harkema et
 * al. 2009); what others witness is offered, and so is what the examiner confirms.
 */
final class Hearsay {
  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final List<String> words;
  private final Set<Integer> said = new TreeSet<>();
  private final boolean confirmed;

  Hearsay(SentenceItems sentence) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.confirmed = lexicon.says("confirms", words);
    IntStream.range(0, words.size()).forEach(at -> addReport(at));
  }

  private void addReport(int at) {
    int hearsay = sentence.term("hearsay", at);
    int by = sentence.term("reported-by", at);
    int person = begins(at) ? sentence.term("reporter", at) : 0;
    if (hearsay > 0) {
      add(at, at + hearsay);
    }
    if (by > 0) {
      int whom = behind("determiner", at + by);
      int named = whom < words.size() ? sentence.term("reporter", whom) : 0;
      if (named > 0) {
        add(at, whom + named);
      }
    }
    if (person > 0) {
      int verb = behind("has-reported", at + person);
      int told = verb < words.size() ? sentence.term("reports", verb) : 0;
      if (told > 0) {
        add(at, verb + told);
      }
    }
  }

  // Nobody of whom it is told: "his mum", but not "no click mum".
  private boolean begins(int at) {
    int before = at - 1;
    while (before >= 0 && lexicon.isListed("determiner", words.get(before))) {
      before--;
    }
    return sentence.breaks().at(before)
        || lexicon.isListed("before-a-question", words.get(before))
        || lexicon.isListed("opener", words.get(before))
        || lexicon.isListed("filler", words.get(before));
  }

  private int behind(String list, int from) {
    int at = from;
    while (at < words.size() && lexicon.isListed(list, words.get(at))) {
      at++;
    }
    return at;
  }

  private void add(int from, int to) {
    IntStream.range(from, to).forEach(said::add);
  }

  /** The words that say who reports. */
  Set<Integer> said() {
    return said;
  }

  /**
   * Where what may be reported begins: a stretch that says nothing else is of what stands before.
   */
  int from() {
    if (said.isEmpty()) {
      return words.size();
    }
    int first = Collections.min(said);
    int from = sentence.breaks().from(first);
    boolean alone =
        sentence.items(from, sentence.breaks().to(first)).stream()
            .allMatch(item -> isOf(item) || item.isEmpty());
    return alone ? -1 : from - 1;
  }

  /** Whether others report what a stretch says. */
  boolean isReported(List<WordItem> chunk) {
    return chunk.stream().anyMatch(this::isOf);
  }

  /** Whether an item says who reports. */
  boolean isOf(WordItem item) {
    return item.places().stream().anyMatch(said::contains);
  }

  /** Whether a claim of what is reported may be offered. */
  boolean mayBeOffered(Claim claim) {
    return confirmed || lexicon.isStepListed("witnessed", claim.step());
  }
}
