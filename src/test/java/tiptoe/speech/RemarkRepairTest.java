package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.SampledCsvSource;
import tiptoe.graph.AcousticModel;
import tiptoe.graph.ModelFolder;
import tiptoe.graph.Phone;
import tiptoe.graph.Pronunciations;
import tiptoe.language.Shipped;

/** Clinical words that the model's own vocabulary lacks; what it hears for them is invented. */
class RemarkRepairTest {
  private static RemarkRepair repair;

  @BeforeAll
  static void read() throws IOException {
    AcousticModel model =
        AcousticModel.read(
            ModelFolder.open(ModelFolder.locate(null, System.getenv(), Path.of(""))));
    repair =
        new RemarkRepair(
            Shipped.network().words(),
            Pronunciations.read(Path.of("grammars/pronunciations.txt"), model.lexicon()),
            model.lexicon());
  }

  @ParameterizedTest
  @CsvSource({
    "the font an el was pulsating, the fontanelle was pulsating",
    "mum asked about the font and l, mum asked about the fontanelle",
    "the anterior fun danielle was pulsating, the anterior fontanelle was pulsating",
    "or to lonnie was hard to do, ortolani was hard to do",
    "i explained the set fellow he my tow ma, i explained the cephalohaematoma",
    "there was some strider when he fed, there was some stridor when he fed",
  })
  void putsAClinicalWordInThePlaceOfWhatSoundsLikeIt(String heard, String meant) {
    assertEquals(meant, repair.repair(heard).text());
  }

  @Test
  void saysWhatItPutInPlaceOfWhat() {
    assertEquals(
        List.of(new RemarkRepair.Put("font an el", "fontanelle")),
        repair.repair("the font an el was pulsating").repairs());
  }

  @ParameterizedTest
  @SampledCsvSource({
    "the parents would like to go home this afternoon",
    "mother was given paracetamol at nine and slept well after that",
    "feeding every three hours and took thirty five of milk from a bottle",
    "grandmother is going to help them with the other children at home",
    "the boys were kept in detention after school",
    "her sister's addiction was mentioned and the detention was long",
    "i heard an expiratory noise and he was hypertonic last night",
    "i told them to come back on friday for the blood test",
  })
  void leavesOrdinaryWordsAlone(String heard) {
    RemarkRepair.Repaired repaired = repair.repair(heard);
    assertEquals(heard, repaired.text());
    assertTrue(repaired.repairs().isEmpty());
  }

  @Test
  void theDistanceOfPhonesIsThatOfEdits() {
    List<Phone> fan = List.of(Phone.F, Phone.AE, Phone.N);
    assertEquals(0, PhoneDistance.between(fan, fan));
    assertEquals(0.5 / 3, PhoneDistance.between(fan, List.of(Phone.V, Phone.AE, Phone.N)), 1e-9);
    assertEquals(1.0 / 3, PhoneDistance.between(fan, List.of(Phone.K, Phone.AE, Phone.N)), 1e-9);
    assertEquals(0.25, PhoneDistance.between(fan, List.of(Phone.F, Phone.AE, Phone.N, Phone.T)));
  }
}
