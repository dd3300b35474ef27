package tiptoe.language;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * On which side something is found where the clause does not say it, what is left unsaid because it
 * was said before, and what is put right. A row is a sentence and all that is recorded of it.
 */
class SidesTest extends Recording {
  /** These recorded the other side too, or something that nobody said of it. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "sole creases present on both feet, left foot has six toes, an extra digit there =>"
            + " sole-creases/left=present;sole-creases/right=present;toes/left=extra-digit",
        "right foot straight, left foot has six toes, an extra digit there =>"
            + " foot-position/right=normal;toes/left=extra-digit",
        "plantar grasp both feet, right foot has six toes, an extra digit =>"
            + " toes/right=extra-digit",
        "right hand has six fingers, the feet are normal, an extra digit there =>"
            + " fingers/right=extra-digit;foot-position/left=normal;foot-position/right=normal",
        "left eye, sticky, both red reflexes present, swollen lids =>"
            + " eyes/left=discharge;eyes/left=swollen-lids;"
            + "red-reflex/left=present;red-reflex/right=present",
        "ortolani negative on both sides, right hip has limited abduction, reduced there =>"
            + " ortolani/left=negative;ortolani/right=negative;hip-abduction/right=limited",
        "lids swollen both sides, and a coloboma in the left eye =>"
            + " eyes/left=swollen-lids;eyes/right=swollen-lids;eyes/left=coloboma",
        "brachial pulse absent on the right and weak on the left, and stridor on both sides =>"
            + " brachial-pulse/right=absent;brachial-pulse/left=weak;"
            + "breath-sounds/left=stridor;breath-sounds/right=stridor",
        "five fingers on the right, normal creases on both palms =>"
            + " fingers/right=five;palm-creases/left=normal;palm-creases/right=normal",
        "brachials good in both arms =>"
            + " brachial-pulse/left=strong;brachial-pulse/right=strong",
        "click in the right hip, abduction limited on that same right side =>"
            + " hip-click/right=present;hip-abduction/right=limited",
        "testis undescended on the left, i was never quite there, on the right =>",
        "left testis up in the groin, right's down =>"
            + " testis/left=inguinal;testis/right=descended",
        "hydrocele right, left testis descended, transilluminates =>"
            + " testis/right=hydrocele;testis/left=descended",
        "left hip tight, doesn't open like the right one, which goes out full =>"
            + " hip-abduction/left=limited;hip-abduction/right=full",
        "grasp weak right hand, good left =>"
            + " palmar-grasp/right=weak;palmar-grasp/left=present",
        "left first, kidneys not enlarged on either side =>"
            + " kidneys/left=not-enlarged;kidneys/right=not-enlarged",
        "just a soft click in the left hip, none in the right, and a click like that is only a"
            + " ligament snapping => hip-click/left=present;hip-click/right=none",
        "the left femoral is weak and the right's strong, or, no, hold on, it's the right that's"
            + " weak and the left that's strong =>"
            + " femoral-pulse/right=weak;femoral-pulse/left=strong",
        "there's no femoral pulse on either side, none, and the arms are fine, strong brachials left and"
            + " right => femoral-pulse/left=absent;femoral-pulse/right=absent;"
            + "brachial-pulse/left=strong;brachial-pulse/right=strong",
        "right foot is a club foot, stiff, and the left's fine =>"
            + " foot-position/right=club-foot;foot-position/left=normal",
        "there's a mass down in the left side of the tummy, firm, the size of a plum =>"
            + " abdominal-mass/left=present",
        "there's a click but no clunk in the left hip =>",
        "caput, skin clear over it => scalp=caput",
        "sacral dimple, no redness round it => lumbosacral=dimple"
      })
  void theSideOfItsOwnClauseWins(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "right hip, ortolani negative, barlow positive =>"
            + " barlow/right=positive;ortolani/right=negative",
        "left hip first, barlow negative, ortolani negative, now the right, barlow negative,"
            + " ortolani negative => barlow/left=negative;barlow/right=negative;"
            + "ortolani/left=negative;ortolani/right=negative",
        "brachial and femoral come together on the right, and on the left =>"
            + " brachio-femoral/left=together;brachio-femoral/right=together",
        "the creases in the palms are normal, on the right hand and on the left =>"
            + " palm-creases/left=normal;palm-creases/right=normal",
        "hydrocele right, the testis is down in it =>"
            + " testis/right=hydrocele;testis/right=descended",
        "ortolani positive on the right, and negative, i'm glad to say, on the left =>"
            + " ortolani/right=positive;ortolani/left=negative",
        "toes curl both sides, grasp there =>"
            + " plantar-grasp/left=present;plantar-grasp/right=present",
        "right first, barlow negative, ortolani negative =>"
            + " barlow/right=negative;ortolani/right=negative",
        "left first, barlow negative, ortolani negative =>"
            + " barlow/left=negative;ortolani/left=negative",
        "on the left, barlow negative and ortolani negative =>"
            + " barlow/left=negative;ortolani/left=negative",
        "sole creases present, plantar grasp present, both feet =>"
            + " sole-creases/left=present;sole-creases/right=present;"
            + "plantar-grasp/left=present;plantar-grasp/right=present",
        "on the right barlow and ortolani are both negative =>"
            + " barlow/right=negative;ortolani/right=negative",
        "barlow and ortolani are both negative, on the left and on the right =>"
            + " barlow/left=negative;barlow/right=negative;"
            + "ortolani/left=negative;ortolani/right=negative",
        "no grasp in the left hand, and that arm hardly moves, reduced =>"
            + " palmar-grasp/left=absent;arm-movement/left=reduced",
        "movement is reduced on the right and the right palmar grasp is weak =>"
            + " arm-movement/right=reduced;palmar-grasp/right=weak",
        "ortolani positive, left hip => ortolani/left=positive",
        "femorals strong apart from the left => femoral-pulse/right=strong",
        "red reflex present in both, barring the left one => red-reflex/right=present",
        "red reflex dull, right eye => red-reflex/right=dull",
        "left hip, barlow negative, right hip => barlow/left=negative",
        "clunk on the right, ortolani positive, well done mum => ortolani/right=positive",
        "white reflex in the right eye, good red one on the left =>"
            + " red-reflex/right=white;red-reflex/left=present",
        "both lugs are set in the right place =>"
            + " ear-position/left=normal;ear-position/right=normal",
        "left hip, barlow negative, left femoral strong, club foot => "
            + "barlow/left=negative;femoral-pulse/left=strong"
      })
  void aSideNamedBeforeOrBehindHoldsForWhatIsOfItsRegion(String row) {
    benchmark.assertRecorded(row);
  }

  /** The t of "can't" is not heard before "see", and "an" is heard as "and". */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "i can see any jaundice => jaundice=none",
        "neck moves well, and i can feel any lumps => neck-movement=full;neck=normal",
        "i can't feel and enlarged liver => liver=not-enlarged",
        "i can feel an enlarged liver => liver=enlarged",
        "so i can see any jaundice => jaundice=none",
        "if i can hear any murmur =>"
      })
  void whatNobodySaysIsReadAsWhatSoundsLikeIt(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "palmar grasp present both sides, plantar grasp too =>"
            + " palmar-grasp/left=present;palmar-grasp/right=present;"
            + "plantar-grasp/left=present;plantar-grasp/right=present",
        "femorals are strong on both sides, brachials strong too =>"
            + " femoral-pulse/left=strong;femoral-pulse/right=strong;"
            + "brachial-pulse/left=strong;brachial-pulse/right=strong",
        "liver and spleen aren't enlarged, neither are the kidneys =>"
            + " liver=not-enlarged;spleen=not-enlarged;"
            + "kidneys/left=not-enlarged;kidneys/right=not-enlarged",
        "the spleen is enlarged, the liver is not => liver=not-enlarged;spleen=enlarged",
        "liver's enlarged but the spleen isn't => liver=enlarged;spleen=not-enlarged",
        "left kidney is enlarged, right kidney isn't =>"
            + " kidneys/left=enlarged;kidneys/right=not-enlarged",
        "kidney on the left, enlarged, right one, not =>"
            + " kidneys/left=enlarged;kidneys/right=not-enlarged",
        "extra digit on the left hand, right hand five =>"
            + " fingers/left=extra-digit;fingers/right=five",
        "barlow negative on the right, barlow negative on the left, and the same for ortolani =>"
            + " barlow/left=negative;barlow/right=negative;"
            + "ortolani/left=negative;ortolani/right=negative",
        "barlow negative on the left, same for ortolani =>"
            + " barlow/left=negative;ortolani/left=negative",
        "the right hip opens fully, so does the left, and the knees are level =>"
            + " hip-abduction/left=full;hip-abduction/right=full;knee-height=equal",
        "right clavicle is intact, so is the left, and the arms move well =>"
            + " clavicle/left=intact;clavicle/right=intact;"
            + "arm-movement/left=full;arm-movement/right=full",
        "right ear fine, also on the left, a skin tag =>"
            + " ear-position/right=normal;ear-form/right=well-formed;ear-form/left=tag"
      })
  void whatWasSaidBeforeNeedNotBeSaidAgain(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "the left femoral is weak, the brachial is not => femoral-pulse/left=weak",
        "the left kidney is enlarged, the left kidney is not =>",
        "rooting present, inguinal hernia too => rooting=present",
        "nipples normal in number and spacing => nipples=normal",
        "lying on his left side, barlow negative =>",
        "the spleen is enlarged, the liver is not what worries me => spleen=enlarged"
      })
  void nothingIsTakenOverThatWasNotMeant(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "that one's sticky, the right eye i mean, left's clear =>"
            + " eyes/right=discharge;eyes/left=clear",
        "left clavicle has a step, right i mean => clavicle/right=step-off",
        "clavicle, left, no, i mean right, a step off => clavicle/right=step-off",
        "left, i mean right, club foot => foot-position/right=club-foot",
        "right clavicle, sorry left clavicle, crepitus => clavicle/left=crepitus",
        "testis undescended on the left, i tell a lie, on the right =>"
            + " testis/right=undescended",
        "crepitus of the left clavicle, not the left, the right => clavicle/right=crepitus",
        "the left hip is positive on barlow, no, ortolani => ortolani/left=positive",
        "suck is weak, no, fairer to say absent => suck=absent",
        "palate is high arched, well no, normal => palate=intact",
        "three little pustules in the groin, no, four => skin=pustules",
        "thought i heard a murmur, listened again when quiet, no murmur => murmur=none",
        "head circumference thirty three, let me redo that, thirty three point five =>"
            + " head-circumference=num:33.5",
        "crepitus on the left clavicle, or is it the right =>",
        "red reflex absent on the left, actually it's there =>"
      })
  void whatIsPutRightStandsAndNothingElse(String row) {
    benchmark.assertRecorded(row);
  }
}
