package tiptoe.language;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said to somebody in the room, between breaks, in a sentence with findings. */
class AsidesTest extends Recording {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "red reflexes seen in both eyes, dad could you knock that light off, thank you"
            + " => red-reflex/left=present; red-reflex/right=present",
        "few milk spots on the nose, leave them be mum, don't squeeze => skin=milia",
        "femorals good and strong both sides, bless her for keeping still"
            + " => femoral-pulse/left=strong; femoral-pulse/right=strong",
        "open up for auntie, come on, there, palate intact => palate=intact",
        "tone's good, fetch me that towel would you, moro symmetrical"
            + " => tone=normal; moro=symmetric",
        "crepitus over the right clavicle, student, hold that arm still for me"
            + " => clavicle/right=crepitus",
        "nappy off, sorry, cold hands, no clicks in either hip"
            + " => hip-click/left=none; hip-click/right=none",
        "soft spot's sunken, sit down mum and we'll talk => anterior-fontanelle=sunken"
      })
  void takesNothingFromWhatIsFound(String row) {
    benchmark.assertRecorded(row);
  }

  /** Not what may turn it round, have it looked at again, put it right or be a finding itself. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "left femoral strong, can you check that again",
        "palate intact, could you have a feel",
        "no murmur, would you agree",
        "hips stable, ask the consultant to look again",
        "red reflexes present, put them down as query",
        "barlow positive, stop, not this baby",
        "heart sounds normal, can you tell mum it might be nothing",
        "ring us, any grunting, yellow skin"
      })
  void recordsNothingWhereItMayTakeFromIt(String sentence) {
    benchmark.assertNothingRecorded(sentence);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "barlow positive on the right, no, forgive me, on the left => barlow/left=positive",
        "not yellow at all, hold her to the window, couple of milk spots on the chin"
            + " => jaundice=none; skin=milia"
      })
  void keepsWhatPartsACorrectionOrADenialFromWhatIsBehind(String row) {
    benchmark.assertRecorded(row);
  }
}
