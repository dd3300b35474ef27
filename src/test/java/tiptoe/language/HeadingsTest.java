package tiptoe.language;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A name first, then a break and what is said of it. */
class HeadingsTest extends Recording {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "jaundice, none, not on the face, not in the sclerae => jaundice=none",
        "murmur, none heard => murmur=none",
        "vomiting, none at all => vomiting=no",
        "grunting, none, flaring, none => breathing=easy",
        "milia on the nose, jaundice, none => skin=milia; jaundice=none",
        "red reflexes, none on the left, bright on the right"
            + " => red-reflex/left=absent; red-reflex/right=present",
        "posture, not flexed, lying in a frog leg position => posture=frog-leg",
        "cord, two vessels, not three => cord-vessels=two",
        "murmur, no, femorals strong =>"
            + " murmur=none; femoral-pulse/left=strong; femoral-pulse/right=strong",
        "dimple, no, spine straight => lumbosacral=clear; spine=straight",
        "caput, no, cephalohaematoma on the right => scalp/right=cephalohaematoma",
        "dimple no, hair yes => lumbosacral=hair-tuft",
        "murmur no, thrill no => murmur=none; precordium=quiet"
      })
  void readsWhatIsSaidOfAName(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "femorals, none of that please",
        "rash, bruising, none",
        "jaundice, none of my business",
        "murmur, not sure",
        "cord, not my favourite"
      })
  void recordsNothingWhereItMayBeSaidOfSomethingElse(String sentence) {
    benchmark.assertNothingRecorded(sentence);
  }
}
