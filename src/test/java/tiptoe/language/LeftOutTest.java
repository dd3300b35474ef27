package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What was not examined, in the ways it is said, and why. */
class LeftOutTest extends Recording {
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
        "i've left the stepping, it's not fair with that drip in him => stepping=not-examined",
        "left the moro out, she's only just dropped off => moro=not-examined",
        "i've left barlow and ortolani undone, on both sides, because she's settled, and quite"
            + " right too => barlow/left=not-examined; barlow/right=not-examined;"
            + " ortolani/left=not-examined; ortolani/right=not-examined",
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
        "no moro done, he's asleep => moro=not-examined",
        "no moro done, i'm not startling him now, he's pink => moro=not-examined; colour=pink",
        "i'll leave the hips, barlow and ortolani not examined"
            + " => barlow/left=not-examined; barlow/right=not-examined;"
            + " ortolani/left=not-examined; ortolani/right=not-examined",
        "no red reflex done => red-reflex/left=not-examined; red-reflex/right=not-examined",
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
        "left out the jaundice, the light is poor => jaundice=not-examined",
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
        "left hand's all splinted up for the drip so i've not counted those fingers"
            + " => fingers/left=not-examined",
        "her left foot is in a cast, toes not counted => toes/left=not-examined",
        "toes not counted because the left foot's in plaster => toes/left=not-examined",
        "her right arm's in a backslab, fingers not counted" + " => fingers/right=not-examined",
        "left hand's got a drip in, fingers not counted on that hand"
            + " => fingers/left=not-examined",
        "cannula in the left hand, grasp not done => palmar-grasp/left=not-examined",
        "left eye's clamped shut, haven't done the red reflex => red-reflex/left=not-examined",
        "left eye's clamped shut, haven't done the red reflexes"
            + " => red-reflex/left=not-examined; red-reflex/right=not-examined",
        "right foot five toes, left hand's bandaged so i haven't counted the fingers"
            + " => toes/right=five; fingers/left=not-examined",
        "left hand's got the drip in, i haven't counted the fingers on either hand"
            + " => fingers/left=not-examined; fingers/right=not-examined"
      })
  void leavesOutTheSideThatIsNamedOfWhereItIs(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "left red reflex good, right eye not checked, he won't open it"
            + " => red-reflex/left=present; red-reflex/right=not-examined",
        "left eye red reflex good, right eye not done"
            + " => red-reflex/left=present; red-reflex/right=not-examined",
        "right red reflex seen, other eye not checked"
            + " => red-reflex/right=present; red-reflex/left=not-examined",
        "left red reflex good, other side not checked"
            + " => red-reflex/left=present; red-reflex/right=not-examined",
        "left testis down, other one not checked"
            + " => testis/left=descended; testis/right=not-examined",
        "left barlow negative, right hip not done"
            + " => barlow/left=negative; barlow/right=not-examined",
        "left grasp strong, right hand not checked"
            + " => palmar-grasp/left=present; palmar-grasp/right=not-examined",
        "left eye normal, right eye not checked" + " => eyes/left=clear; eyes/right=not-examined",
        "left eye clear, left red reflex good, right eye not checked"
            + " => eyes/left=clear; red-reflex/left=present; eyes/right=not-examined"
      })
  void leavesOutOnTheOtherSideWhatWasFoundOnOne(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "urology referral still to do, and i need to tell them about the testes, not done that yet"
            + " => referral-urology=due",
        "still have to talk to them about the hips, haven't done that => none",
        "need to ring ortho about the hips, not done yet => none",
        "i'll have to explain the cleft to mum, not done that yet => none",
        "the other eye not checked => none"
      })
  void leavesOutNothingThatIsToBeToldOrIsNotPlain(String row) {
    SentenceBenchmark.Count count = benchmark.count(List.of(row));
    assertEquals(
        0,
        count.recordedWrong + count.offeredWrong + count.talkRecorded + count.talkOffered,
        count.notes::toString);
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
