package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.wording.AssessmentWording;
import tiptoe.wording.Words;

class AssessmentTextTest {
  private static String text(String baby, String findings, Settings settings) {
    return AssessmentWording.of(
        Bedside.assess(baby, findings, settings), new Words(Protocol.standard(), settings));
  }

  @Test
  void readsFromTheMostPressingToTheCaution() {
    assertEquals(
        """
        flags
          URGENT, today: red reflex (left)
            consider cataract or retinoblastoma; refer to ophthalmology immediately
            red-reflex-abnormal; AAP, Pediatrics 2008;122:1401; NHS England, NIPE screening programme handbook, 2024: seen within 2 weeks; statement 2
          ARRANGE, at 4 to 6 weeks of age: Barlow, Ortolani
            hip ultrasound at 4 to 6 weeks of age, stable hips or not
            hip-risk-nipe; NHS England, NIPE screening programme handbook, 2024 (configured: hip-ultrasound uk)
          ARRANGE, before discharge: clavicle (left and right)
            consider fracture of the clavicle; X-ray as local protocol says; check arm movement and Moro
            clavicle-injury; common practice; statements 4, 5
        size at birth
          weight 3000 g: 25th centile, z -0.69 (INTERGROWTH-21st newborn size standard, Lancet 2014;384:857); 30th centile, z -0.52 (WHO Child Growth Standards 2006, at birth)
        computed
          gestation 40+0 weeks, full term (ACOG Committee Opinion 579, 2013)
          birth weight 3000 g, not low (WHO, ICD-10 P07)
        plan
          2026-11-25, today: refer to ophthalmology immediately (cataract or retinoblastoma)
          before discharge: X-ray as local protocol says; check arm movement and Moro (fracture of the clavicle)
          by 2026-12-08, by 2 weeks of age: eyes seen by ophthalmology (the red reflex was not as expected)
          2026-12-22 to 2027-01-05, at 4 to 6 weeks of age: hip ultrasound (breech presentation, also of a twin, or first-degree family history)
          2027-01-05 to 2027-01-19, at 6 to 8 weeks of age: examine eyes, heart and hips again (every baby)
        missing
          palate, palpated: a submucous cleft is felt, not seen
        rules: saturation-screen 2025, hip-ultrasound uk, jaundice nice-cg98, hypoglycaemia bapm-2017, size-standard intergrowth-21st
        Tiptoe documents the examination and reminds. It does not diagnose, and it defers to your local protocol and to the judgement of licensed practitioners.
        """,
        text(
            "sex=girl gestation=40+0 age=18 presentation=breech",
            "weight 3000 g; red-reflex.left white; palate intact; clavicle.left step-off;"
                + " clavicle.right fracture",
            Settings.DEFAULT));
  }

  @Test
  void saysThatNothingWasRaised() {
    String text = text("sex=boy presentation=cephalic", "", Settings.DEFAULT);
    assertTrue(text.startsWith("flags: none raised by what was stated\n"), text);
    assertTrue(
        text.contains("\n  at 6 to 8 weeks of age: examine eyes, heart, hips and testes again ("),
        text);
  }

  @Test
  void usesTheChosenUnitsAndSpelling() {
    Settings american =
        Settings.DEFAULT
            .with(Setting.SPELLING, "american")
            .with(Setting.WEIGHT_UNIT, "lb")
            .with(Setting.LENGTH_UNIT, "in");
    String text = text("sex=girl gestation=40+0 age=18", "weight 3345 g; length 50.8 cm", american);
    assertTrue(text.contains("weight 3345 g (7 lb 6 oz): "), text);
    assertTrue(text.contains("length 50.8 cm (20.0 in): "), text);
    assertTrue(text.contains(" percentile, z "), text);
  }

  @Test
  void spellsTheAdviceAnewButNoSource() {
    Settings american = Settings.DEFAULT.with(Setting.SPELLING, "american");
    String text = text("age=18", "murmur present; skin haemangioma", american);
    assertTrue(text.contains("; hemangioma near eye or airway"), text);
    assertTrue(text.contains(", 2024: senior paediatrician within 24 hours"), text);
  }

  @Test
  void showsCentimetresUnlessInchesWereChosen() {
    assertTrue(text("", "length 50.8 cm", Settings.DEFAULT).contains("length 50.8 cm; "));
  }

  @Test
  void datesWhatHasOnlyABeginningOrAnEnd() {
    String text =
        text(
            "age=18",
            "lumbosacral hair-tuft; saturation-right-hand 99 %; saturation-foot 99 %",
            Settings.DEFAULT);
    assertTrue(text.contains("  by 2027-02-24, by 3 months of age: spinal ultrasound ("), text);
    assertTrue(text.contains("  from 2026-11-25T16:30:00+00:00, from 24 hours of age: "), text);
  }

  @Test
  void remarksStandBehindWhatTheyAreAbout() {
    String text =
        text("age=30", "saturation-right-hand 98 %; saturation-foot 97 %", Settings.DEFAULT);
    assertTrue(
        text.contains(
            "  saturation screen: passed; a pass does not exclude coarctation (AAP 2025 screen,"),
        text);
  }

  @Test
  void namesWhatIsToBeStated() {
    assertTrue(
        text("sex=boy presentation=breech", "jaundice present", Settings.DEFAULT)
            .contains(
                """
                to be stated
                  age: jaundice in the first 24 hours is urgent; jaundice beyond 14 days at term, 21 days before, is prolonged
                  born at: dates of the plan are counted from birth
                  gestation: jaundice beyond 14 days at term, 21 days before, is prolonged
                rules:\
                """));
  }

  @Test
  void namesAStepThatIsMissing() {
    assertTrue(
        text("", "apgar-5 3", Settings.DEFAULT)
            .contains("missing\n  Apgar at 10 minutes: the 5-minute Apgar is below 7\n"));
  }
}
