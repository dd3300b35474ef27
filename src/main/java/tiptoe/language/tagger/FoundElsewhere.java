package tiptoe.language.tagger;

import java.util.List;
import java.util.Set;

/**
 * Says which findings are not of the step that their words seem to be of: they are found around
 * what was spoken of, on the linen, on a scan, or were so before. The words are in {@code
 * cues.txt}.
 */
final class FoundElsewhere {
  private final SentenceItems said;

  FoundElsewhere(SentenceItems said) {
    this.said = said;
  }

  /**
   * Whether the finding is no claim of the steps that it has here.
   *
   * @param topic the steps of what was spoken of before it
   */
  boolean is(TermMatch match, List<Sense> senses, Set<String> topic) {
    return !senses.isEmpty()
        && (isScore(match)
            || isOnLinen(match, senses)
            || isOnScan(match, senses)
            || isPast(match)
            || isOfJoint(match, senses, topic)
            || isAroundIt(match) && senses.stream().noneMatch(sense -> isOfTopic(topic, sense)));
  }

  // "A true club foot on the left, stiff as a board"
  private boolean isOfJoint(TermMatch match, List<Sense> senses, Set<String> topic) {
    List<String> words = said.words().subList(match.from(), match.to());
    return said.lexicon().isListed("of-a-joint", words)
        && !topic.isEmpty()
        && senses.stream()
            .noneMatch(
                sense -> topic.stream().anyMatch(step -> said.lexicon().near(step, sense.step())));
  }

  // "Breast two, genitals two"
  private boolean isScore(TermMatch match) {
    return match.from() > 0
        && match.to() == match.from() + 1
        && said.isListed("count", match.from())
        && said.isListed("scored", match.from() - 1);
  }

  // "A bit of yellow on the nappy"
  private boolean isOnLinen(TermMatch match, List<Sense> senses) {
    int at = match.to();
    if (said.breaks().at(at) || !said.isListed("preposition", at)) {
      return false;
    }
    at++;
    while (!said.breaks().at(at) && said.isListed("place-determiner", at)) {
      at++;
    }
    return !said.breaks().at(at)
        && said.isListed("linen", at)
        && endsThere(at + 1)
        && senses.stream().allMatch(sense -> said.lexicon().isStepListed("tints", sense.step()));
  }

  // "In the nappy area" is the baby's.
  private boolean endsThere(int at) {
    return said.breaks().at(at) || !said.isListed("mark", at);
  }

  // "Nothing on the scans before birth, kidneys fine": nobody felt them.
  private boolean isOnScan(TermMatch match, List<Sense> senses) {
    return said.lexicon().isListed("good", said.words().subList(match.from(), match.to()))
        && senses.stream().allMatch(sense -> said.lexicon().isStepListed("scanned", sense.step()))
        && said.says("on-scan", 0, match.from());
  }

  // "Was jaundiced, now pink"
  private boolean isPast(TermMatch match) {
    int behind = said.breaks().to(match.from()) + 1;
    return match.from() > 0
        && said.isListed("of-before", match.from() - 1)
        && behind < said.words().size()
        && said.isListed("by-now", behind);
  }

  // "Sacral dimple, no redness round it", "caput, skin clear over it"
  private boolean isAroundIt(TermMatch match) {
    return said.says("around-it", match.from(), said.breaks().to(match.from()));
  }

  // "The stump is dry, no redness round it": of the skin there. "Skin clear" is that of anywhere.
  private boolean isOfTopic(Set<String> topic, Sense sense) {
    return said.lexicon().isAnywhere(sense.step())
        ? !said.lexicon().isNormal(sense)
        : (topic.isEmpty()
            || topic.stream().anyMatch(step -> said.lexicon().near(step, sense.step())));
  }
}
