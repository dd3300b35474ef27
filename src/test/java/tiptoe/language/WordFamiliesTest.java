package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Families of words for what the protocol holds: each row is recorded as labelled, and no more. */
class WordFamiliesTest extends Recording {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "she lies with hips and knees bent => posture=flexed",
        "his tongue and lips are blue => colour=central-cyanosis",
        "just a little acrocyanosis in these hands and feet => colour=acrocyanosis",
        "afof => anterior-fontanelle=open-soft-flat",
        "eyes are clear, and the spacing between them is normal =>"
            + " eyes/left=clear;eyes/right=clear;eye-spacing=normal",
        "eyes are hyperteloric => eye-spacing=hypertelorism",
        "he has a right sided torticollis => neck-movement/right=torticollis",
        "right ear canal absent => ear-form/right=no-canal",
        "submucous cleft of the palate => palate=submucous-cleft",
        "tiny white spots on the gums => gums=epstein-pearls",
        "nares flaring => breathing=nasal-flaring",
        "gallop heard => heart-sounds=gallop",
        "apex is right sided => precordium=apex-right",
        "enlargement of the spleen => spleen=enlarged",
        "weakness of the right arm => arm-movement/right=reduced",
        "bilateral congenital club foot =>"
            + " foot-position/left=club-foot;foot-position/right=club-foot",
        "left foot merely positional => foot-position/left=positional",
        "fluid leaking from the sacral dimple => lumbosacral=leaking",
        "ventral chordee => penis=chordee",
        "hs normal, hasn't pu'd => heart-sounds=normal;urine=not-yet",
        "no rooting when i stroke the cheek => rooting=absent",
        "feet on the mattress, and he's stepping => stepping=present",
        "knees out to the side, full hip abduction both sides =>"
            + " hip-abduction/left=full;hip-abduction/right=full",
        "theek hai, cry is strong, accha => cry=strong"
      })
  void readsWordsInAnyOrderAndForm(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "pink with acrocyanosis only => colour=pink;colour=acrocyanosis",
        "labia normal, little bit of white discharge => labia=normal;labia=discharge",
        "hydrocele on the right, but both testes are down =>"
            + " testis/right=hydrocele;testis/left=descended;testis/right=descended",
        "nothing on the skin apart from a few little milia => skin=milia",
        "that's no bruise, it's a mongolian blue spot over the sacrum => skin=dermal-melanocytosis"
      })
  void recordsWhatIsBenignBesideWhatIsNormal(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "posture flexed, snug under the duvet => posture=flexed",
        "cry is strong, an opera singer in the making => cry=strong",
        "grasp strong on both sides, a proper goalkeeper =>"
            + " palmar-grasp/left=present;palmar-grasp/right=present",
        "moving both arms fully, conducting the orchestra =>"
            + " arm-movement/left=full;arm-movement/right=full",
        "stepping present, off to the shops already => stepping=present",
        "suck is strong, ravenous wee bairn => suck=strong",
        "the neck itself is normal => neck=normal",
        "abdomen soft, easy there cariad => abdomen=soft",
        "moro symmetrical, sawa sana mtoto => moro=symmetric",
        "umbilical hernia present, it'll likely close by itself => umbilical-hernia=present",
        "the tone held face down is good, dead strong for a titch => ventral-tone=good",
        "suck is strong, bravissimo bella => suck=strong"
      })
  void takesAnAsideOfEverydayWordsForNothing(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tone normal, a bit off => tone=normal",
        "palate intact, with persuasion only => palate=intact",
        "skin clear, more or less, till yesterday => skin=clear",
        "chest clear, rattles => breath-sounds=clear"
      })
  void doesNotRecordBesideWordsThatMayTakeFromIt(String row) {
    SentenceBenchmark.Count count = benchmark.count(List.of(row));
    assertEquals(0, count.recordedRight + count.recordedWrong, () -> count.notes.toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tone held face down, good => ventral-tone=good",
        "the abdomen has a lump, the lump is firm => abdominal-mass=present",
        "belly soft, one lump on the left, firm and round =>"
            + " abdomen=soft;abdominal-mass/left=present",
        "not sucking at all => suck=absent",
        "chest clear of recession => breathing=easy",
        "submucous cleft in the soft palate => palate=submucous-cleft",
        "the labia show a little white discharge => labia=discharge",
        "little white spots along the gum line => gums=epstein-pearls"
      })
  void recordsNothingElseOfTheSameWords(String row) {
    benchmark.assertRecorded(row);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "skin is grand, one or two milia on the bridge of the nose => skin=milia",
        "skin looks good, just a stork mark on the back of the neck => skin=salmon-patch",
        "white discharge at the vulva, quite normal => labia=discharge"
      })
  void takesPraiseForNoFindingBesideOneThatIsBenign(String row) {
    SentenceBenchmark.Count count = benchmark.count(List.of(row));
    assertEquals(0, count.missed(), () -> count.notes.toString());
    assertEquals(0, count.recordedWrong + count.offeredWrong, () -> count.notes.toString());
  }
}
