package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.language.SecondReading.Parted;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/** Where sentences said in one breath are parted; a comma stands where one is. */
class PartingsTest {
  private static TypedText typed;
  private static LayLexicon lexicon;

  @BeforeAll
  static void read() throws IOException {
    typed = TypedText.load(Path.of("grammars/spellings.txt"));
    lexicon = LayLexiconReader.shipped(Protocol.standard(), typed::words);
  }

  private static Parted parted(String text) {
    List<String> words = typed.utterance(text.replace(",", ""));
    return new Partings(lexicon, words, new WordItems(lexicon).of(words)).parted();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "the cry is strong, she's alert and pink",
        "both red reflexes are present, i can see them well",
        "tone good, and i can hear a murmur",
        "i can see how she likes it, the palate is intact",
        "easy breathing, no recession",
        "no jaundice, no bruising, no birthmarks",
        "heart sounds normal, the left hip is stable",
        "clavicles intact, arms moving well",
        "sutures normal, anterior fontanelle open soft and flat",
        "head circumference thirty four point five, length fifty one",
        "jittery, a tremor of the hands",
        "stays still, a left facial palsy",
        "testes descended, left one i can't find",
        "femoral pulses right strong, left strong",
        "barlow negative on the left, and on the right also",
        "left nostril patent, but nothing comes through the right blocked",
        "palate intact, mum, it's all fine",
        "respiratory rate fifty, sorry, fifty four",
        "lovely, you're doing well, the moro is symmetric"
      })
  void partsWhereSomethingBeginsAnew(String text) {
    assertEquals(List.of(), misplaced(text));
  }

  /** What belongs together; a doubt or a plan may reach over all. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "left hand six fingers",
        "in the left eye the red reflex is white",
        "a murmur that i can hear at the left sternal edge",
        "a small dimple in the sacrum base seen",
        "no crepitus or swelling of the clavicles",
        "neither liver nor spleen enlarged",
        "barlow and ortolani negative both sides",
        "the hips are stable and the spine is straight",
        "send the cord blood",
        "possible murmur heart sounds normal",
        "i'll do the hips later palate intact"
      })
  void leavesWholeWhatBelongsTogether(String text) {
    assertEquals(List.of(), misplaced(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"is the palate intact", "his mum has blue eyes the red reflex is present"})
  void knowsAQuestionAndOtherPeopleForTalk(String text) {
    assertTrue(parted(text).talk());
  }

  @ParameterizedTest
  @CsvSource({
    "weight three point four that's the weight before the feed, true",
    "open not bulging, true",
    "heart sounds normal the left hip is stable, false"
  })
  void tellsWhetherAWordIsUnfamiliar(String text, boolean unfamiliar) {
    assertEquals(unfamiliar, parted(text).unfamiliar());
  }

  // What is parted otherwise; nothing where it is parted so.
  private static List<String> misplaced(String text) {
    String said = String.join(" ", parted(text).words()).replace(" ,", ",");
    return said.equals(text) ? List.of() : List.of(said);
  }
}
