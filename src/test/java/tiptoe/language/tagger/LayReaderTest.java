package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;

/** The lay lexicon against the protocol. */
class LayReaderTest {
  private static final Protocol PROTOCOL = Protocol.standard();
  private static final LayLexicon LAY =
      LayLexiconReader.shipped(PROTOCOL, text -> List.of(text.replace('-', ' ').split(" +")));

  @Test
  void everyMeasuredStepHasWordsForItsStructure() {
    Set<String> parts = new HashSet<>();
    LAY.terms().stream()
        .filter(term -> term.sense().kind() == Sense.Kind.PART)
        .forEach(term -> parts.add(term.sense().step()));
    Set<String> without = new TreeSet<>();
    PROTOCOL
        .steps()
        .filter(step -> step.isMeasured() && !parts.contains(step.id()))
        .forEach(step -> without.add(step.id()));
    assertEquals(Set.of(), without);
  }

  @Test
  void everyValueHasWordsUnlessItIsWhatADenialComesTo() {
    Set<String> said = new HashSet<>();
    LAY.terms().stream()
        .filter(term -> term.sense().kind() == Sense.Kind.VALUE)
        .forEach(term -> said.add(term.sense().step() + " " + term.sense().value()));
    Set<String> without = new TreeSet<>();
    PROTOCOL
        .steps()
        .flatMap(
            step ->
                step.values().stream()
                    .filter(value -> !isDenial(step.id(), value.id(), value.norm()))
                    .map(value -> step.id() + " " + value.id()))
        .filter(value -> !said.contains(value))
        .forEach(without::add);
    assertEquals(Set.of(), without);
  }

  private static boolean isDenial(String step, String value, Norm norm) {
    return norm == Norm.NORMAL && LAY.opposite(step, "present").filter(value::equals).isPresent();
  }

  /**
   * One wording of six hundred thousand terms took a gigabyte and most of the time of a reading.
   */
  @Test
  void noMoreTermsAreWrittenThanAStartCanRead() {
    int terms = LAY.terms().size();
    assertTrue(terms <= 300_000, () -> terms + " terms");
  }

  /** "Straight with no" took the denial from the dimple behind it, which was recorded. */
  @Test
  void noValueEndsInAWordThatDeniesWhatStandsBehindIt() {
    assertEquals(
        List.of(),
        LAY.terms().stream()
            .filter(term -> term.sense().kind() == Sense.Kind.VALUE)
            .map(Term::words)
            .filter(words -> List.of("no", "without", "nor").contains(words.get(words.size() - 1)))
            .filter(words -> words.size() > 1)
            .toList());
  }

  @Test
  void littleWordsMayStandInsideATerm() {
    List<TermMatch> matches = LAY.matches(List.of("ridge", "along", "the", "sagittal", "suture"));
    assertEquals(1, matches.size());
    assertEquals(5, matches.get(0).to());
    assertTrue(matches.get(0).steps(Sense.Kind.VALUE).contains("sutures"));
  }

  @Test
  void rightIsNoSideInAllRight() {
    List<TermMatch> matches = LAY.matches(List.of("all", "right", "then"));
    assertTrue(matches.stream().noneMatch(match -> match.isCue("right")));
  }
}
