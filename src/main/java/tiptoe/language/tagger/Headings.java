package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tiptoe.language.TypedText;

/**
 * Reads a name with a break behind it and then what is said of it: "jaundice, none at all" is no
 * jaundice at all, "posture, not flexed" that it is not. The words are in {@code cues.txt}.
 */
final class Headings {
  private static final int LONGEST_NAME = 4;
  private static final int LONGEST_TAIL = 5;
  private static final String NO = "no";
  private static final String YES = "yes";
  private static final String THERE_IS = "there's";

  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<List<String>> chunks = new ArrayList<>();

  Headings(LayLexicon lexicon, List<String> words) {
    this.lexicon = lexicon;
    this.words = words;
    Breaks breaks = new Breaks(words);
    for (int from = 0; from <= words.size(); from = breaks.to(from) + 1) {
      chunks.add(words.subList(from, breaks.to(from)));
    }
  }

  /** The words with each name put into the stretch that says something of it. */
  List<String> joined() {
    if (IntStream.range(0, chunks.size()).noneMatch(i -> isOfBefore(i) || isAnswered(i))) {
      return words;
    }
    List<List<String>> read = new ArrayList<>();
    boolean free = true;
    for (int i = 0; i < chunks.size(); i++) {
      List<String> name = chunks.get(i);
      if (isAnswered(i)) {
        int last = name.size() - 1;
        List<String> said = said(name.subList(0, last), name.subList(last, name.size()));
        // "Dimple no, hair yes": the denial ends there.
        boolean denied = !read.isEmpty() && read.get(read.size() - 1).get(0).equals(NO);
        read.add(
            denied && !said.get(0).equals(NO)
                ? Stream.concat(Stream.of(THERE_IS), said.stream()).toList()
                : said);
        free = true;
        continue;
      }
      boolean heads = free && isOfBefore(i + 1) && isName(name);
      read.add(heads ? said(name, chunks.get(i + 1)) : name);
      // "Rash, bruising, none": who knows how far it reaches.
      free = heads || !isNamed(name);
      i += heads ? 1 : 0;
    }
    List<String> joined = new ArrayList<>();
    for (List<String> chunk : read) {
      joined.addAll(joined.isEmpty() ? List.of() : List.of(TypedText.BREAK));
      joined.addAll(chunk);
    }
    return joined;
  }

  private boolean isOfBefore(int index) {
    if (index == 0 || index >= chunks.size() || chunks.get(index).isEmpty()) {
      return false;
    }
    List<String> chunk = chunks.get(index);
    return chunk.size() <= LONGEST_TAIL
        && (lexicon.isListed("none-of-it", chunk.get(0))
                && (chunk.size() == 1 || lexicon.isListed("none-behind", chunk.get(1)))
            || lexicon.isListed("said-of-heading", chunk.get(0))
            || isNo(index));
  }

  // "Murmur, no, femorals strong": what comes then is of something else, so that the "no" puts
  // nothing right.
  private boolean isNo(int index) {
    return chunks.get(index).equals(List.of(NO))
        && isFound(chunks.get(index - 1))
        && (index + 1 == chunks.size()
            || isOfElse(chunks.get(index + 1), chunks.get(index - 1))
            || index + 2 < chunks.size() && chunks.get(index + 2).equals(List.of(NO)));
  }

  // "Murmur no, dimple yes"
  private boolean isAnswered(int index) {
    List<String> chunk = chunks.get(index);
    int last = chunk.size() - 1;
    return last > 0
        && (chunk.get(last).equals(NO) || chunk.get(last).equals(YES))
        && isFound(chunk.subList(0, last));
  }

  // "Frenulum a little tight, no": what tells how much is no name that is asked about.
  private boolean isFound(List<String> name) {
    return isName(name)
        && lexicon.matches(name).stream().allMatch(lexicon::isAbnormal)
        && Stream.of("severity", "how-much").noneMatch(list -> lexicon.says(list, name));
  }

  private boolean isOfElse(List<String> chunk, List<String> name) {
    Set<String> steps = lexicon.matches(name).get(0).steps(Sense.Kind.VALUE);
    List<TermMatch> matches = lexicon.matches(chunk);
    return matches.stream()
            .anyMatch(m -> m.is(Sense.Kind.PART) || m.words() > 1 && lexicon.isNormal(m))
        && matches.stream()
            .flatMap(
                match ->
                    Stream.of(Sense.Kind.PART, Sense.Kind.VALUE)
                        .flatMap(kind -> match.steps(kind).stream()))
            .noneMatch(steps::contains);
  }

  private List<String> said(List<String> name, List<String> behind) {
    boolean none = lexicon.isListed("none-of-it", behind.get(0)) || behind.equals(List.of(NO));
    List<String> said = new ArrayList<>(none ? List.of(NO) : List.of());
    said.addAll(name);
    said.addAll(none || behind.equals(List.of(YES)) ? behind.subList(1, behind.size()) : behind);
    return said;
  }

  // Nothing but a name: no side, no denial, nothing that is said of it.
  private boolean isName(List<String> chunk) {
    List<TermMatch> matches = lexicon.matches(chunk);
    boolean term =
        matches.size() == 1
            && matches.get(0).from() == 0
            && matches.get(0).to() == chunk.size()
            && !lexicon.denies(matches.get(0), chunk)
            && (matches.get(0).is(Sense.Kind.PART) || lexicon.isAbnormal(matches.get(0)));
    return !chunk.isEmpty()
        && chunk.size() <= LONGEST_NAME
        && (term || lexicon.isListed("heading", chunk));
  }

  private boolean isNamed(List<String> chunk) {
    return isName(chunk) || lexicon.matches(chunk).stream().allMatch(lexicon::isAbnormal);
  }
}
