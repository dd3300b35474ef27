package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What was not examined, in the ways it is said, and why. */
class LeftOutTest {
  private static SentenceBenchmark benchmark;

  @BeforeAll
  static void train() throws IOException {
    benchmark = SentenceBenchmark.shipped();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "length not done today, tape's gone missing => length=not-examined",
        "i didn't look in the mouth for the palate, she's only just been fed =>"
            + " palate=not-examined",
        "i haven't measured the length, she's wriggling like an eel => length=not-examined",
        "stepping, not examined, dad's just got the baby settled => stepping=not-examined",
        "i'm not going to do stepping, she's exhausted => stepping=not-examined",
        "stepping not done because baby is on oxygen => stepping=not-examined",
        "stepping i'll leave, he's had quite enough of me => stepping=not-examined",
        "did neither barlow nor ortolani on the left, he's cross"
            + " => barlow/left=not-examined; ortolani/left=not-examined",
        "barlow and ortolani, not done, she's in a pavlik harness already"
            + " => barlow/left=not-examined; barlow/right=not-examined;"
            + " ortolani/left=not-examined; ortolani/right=not-examined",
        "kidneys not examined, he was bearing down, left or right"
            + " => kidneys/left=not-examined; kidneys/right=not-examined",
        "he's too cross for the femorals, i can't do either of them now"
            + " => femoral-pulse/left=not-examined; femoral-pulse/right=not-examined",
        "left femoral strong, right one not done, there's a line in that groin"
            + " => femoral-pulse/left=strong; femoral-pulse/right=not-examined",
        "no head circumference today, the hat's on => head-circumference=not-examined",
        "no length today, he won't keep his legs still => length=not-examined",
        "no moro today, i'm leaving it because she has gone to sleep on dad => moro=not-examined",
        "moro left out, the arm is splinted and i won't be cruel, tone normal"
            + " => moro=not-examined; tone=normal",
        "the vessels of the cord can no longer be assessed, since the stump has dried"
            + " => cord-vessels=not-assessable"
      })
  void recordsWhatWasNotDoneWhateverTheReason(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "couldn't listen for a murmur, he's screaming the place down => murmur=not-examined",
        "i have left out the murmur, as the baby will not stop crying => murmur=not-examined",
        "left out the jaundice, the light is bad => jaundice=not-examined",
        "couldn't elicit the moro, she's swaddled => moro=not-examined",
        "moro not done, sleeping peacefully => moro=not-examined",
        "weight not done, mum's breastfeeding => weight=not-examined",
        "couldn't feel the left testis, he's wriggling too much => testis/left=not-examined",
        "not able to feel the spleen, tense abdomen => spleen=not-examined; abdomen=tense",
        "barlow not done, mom's nursing now => barlow/left=not-examined; barlow/right=not-examined",
        "can't feel the femorals, he keeps kicking"
            + " => femoral-pulse/left=not-examined; femoral-pulse/right=not-examined",
        "i have not seen the red reflexes, because he will not open his eyes for me"
            + " => red-reflex/left=not-examined; red-reflex/right=not-examined",
        "i could not see the red reflexes, because the lids of both eyes are swollen"
            + " => red-reflex/left=not-examined; red-reflex/right=not-examined;"
            + " eyes/left=swollen-lids; eyes/right=swollen-lids"
      })
  void findsNothingInTheReasonButWhatIsNotNormal(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "couldn't get a red reflex on the right => red-reflex/right=absent",
        "i didn't feel the femorals => femoral-pulse/left=absent; femoral-pulse/right=absent"
      })
  void asksWhetherWhatWasOnlyTriedIsAbsent(String row) {
    SentenceBenchmark.Count count = benchmark.count(List.of(row));
    assertEquals(0, count.recordedRight + count.recordedWrong, count.notes::toString);
    assertEquals(count.statements, count.offeredRight, count.notes::toString);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "can't hear any murmur, he's screaming",
        "couldn't see any jaundice in this light",
        "with the startle, her left arm stays down and only the right goes up",
        "did we not do the hips",
        "if he's asleep, moro not done",
        "hips not examined, that was his brother",
        "the moro reflex i leave for the end, it upsets them",
        "i haven't checked the temperature of the room",
        "i've never done a moro like it",
        "we're not done with the hips",
        "what would a weak cry sound like, i've never heard one",
        "haven't felt femorals this strong in weeks"
      })
  void takesTalkForNothingLeftOut(String sentence) {
    SentenceBenchmark.Count count = benchmark.count(List.of(sentence + " => none"));
    assertEquals(
        0, count.talkRecorded + count.talkOffered + count.talkAsked, count.notes::toString);
  }
}
