package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/**
 * One table for each group of rules: baby, findings, all flags that must be raised, and what the
 * row rests on. "Practice" is common practice without a published source.
 */
class FlagTablesTest {
  private static void check(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source, Settings.DEFAULT);
  }

  private static void check(
      String baby, String findings, String flags, String source, Settings settings) {
    assertNotNull(source);
    assertEquals(
        flags == null ? "" : flags, Bedside.flags(Bedside.assess(baby, findings, settings)));
  }

  /** What was stated of pregnancy, family and the first days raises flags without any finding. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          vomiting=bile | | emergency vomiting-bile | BAPM 2024
          vomiting=yes | | urgent vomiting-colour-not-stated | BAPM 2024
          vomiting=not-bilious | | | BAPM 2024
          vomiting=milk | | | practice
          vomiting=no | | | practice
          vomiting=blood | | urgent vomiting-blood | practice
          feeding=breast feeds=well | | | NICE NG195
          feeding=breast feeds=poorly | | urgent feeding-difficulty | NICE NG195
          feeding=breast feeds=refused | | urgent feeding-difficulty | NICE NG195
          antenatal-renal-dilatation=yes | | arrange antenatal-renal-dilatation | practice
          antenatal-renal-dilatation=no antenatal-anomaly=no | | | practice
          antenatal-anomaly=yes | | arrange antenatal-anomaly | practice
          kidney-family-history=yes | | note kidney-family-history | practice
          hearing-family-history=yes | | arrange hearing-family-history | JCIH 2007
          bleeding-family-history=yes | | arrange bleeding-family-history | practice
          sibling-phototherapy=yes | | arrange sibling-phototherapy | NICE CG98
          direct-antiglobulin=positive | | arrange direct-antiglobulin-positive | AAP 2022
          direct-antiglobulin=negative | | | AAP 2022
          maternal-opioid=yes | | arrange maternal-opioid | practice
          maternal-antidepressant=yes | | note maternal-antidepressant | practice
          parental-concern=yes | | note parental-concern | practice
          vitamin-k=given | | | NICE CG37
          vitamin-k=due | | arrange vitamin-k-not-given | NICE CG37
          vitamin-k=declined | | arrange vitamin-k-declined | practice
          vitamin-k=by-mouth | | arrange vitamin-k-by-mouth | practice
          hearing-screen=referred | | arrange hearing-screen-referred | JCIH 2007
          hearing-screen=passed blood-spot=done | | | JCIH 2007
          hearing-screen=declined | | arrange screening-declined | practice
          blood-spot=declined | | arrange screening-declined | practice
          maternal-hepatitis-b=positive | | urgent maternal-hepatitis-b | WHO 2017
          maternal-hepatitis-b=positive hepatitis-b=due | | urgent maternal-hepatitis-b | WHO 2017
          maternal-hepatitis-b=positive hepatitis-b=given | | | WHO 2017
          maternal-hepatitis-b=negative | | | WHO 2017
          """)
  void history(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | umbilical-skin clear | | practice
          | umbilical-skin redness | emergency umbilical-redness | practice
          | umbilical-skin redness; umbilical-skin discharge | emergency umbilical-redness, urgent umbilical-discharge | practice
          | umbilical-skin not-examined | | not examined raises nothing
          | cord-stump bleeding | urgent cord-bleeding | practice
          | cord-stump moist | note cord-moist | practice
          """)
  void umbilicus(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | red-reflex.left present; red-reflex.right present | | AAP Pediatrics 2008;122:1401
          | red-reflex.left absent | urgent red-reflex-abnormal | AAP Pediatrics 2008;122:1401
          | red-reflex.right white | urgent red-reflex-abnormal | AAP Pediatrics 2008;122:1401
          | red-reflex.right dull; red-reflex.left dull | urgent red-reflex-abnormal | AAP Pediatrics 2008;122:1401
          | red-reflex.left asymmetric | urgent red-reflex-abnormal | AAP Pediatrics 2008;122:1401
          | eyes.left cloudy-cornea | urgent cloudy-cornea | practice
          eye-family-history=yes | red-reflex.left present; red-reflex.right present | arrange eye-family-history | AAP Pediatrics 2008;122:1401
          eye-family-history=no | red-reflex.left present | | AAP Pediatrics 2008;122:1401
          """)
  void eyes(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | femoral-pulse.left strong; femoral-pulse.right strong; brachio-femoral.left together | | practice
          | femoral-pulse.left weak | urgent femoral-pulse-weak | practice
          | femoral-pulse.right absent | urgent femoral-pulse-weak | practice
          | brachio-femoral.left delayed | urgent femoral-pulse-weak | practice
          | femoral-pulse.left bounding | urgent pulses-bounding | practice
          | brachial-pulse.left weak | urgent brachial-pulse-weak | practice
          | brachial-pulse.left absent; femoral-pulse.left absent | urgent femoral-pulse-weak, urgent brachial-pulse-weak | practice
          """)
  void pulses(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | saturation-right-hand 95 %; saturation-foot 95 % | | AAP 2025, Pediatrics 155:e2024069667
          | saturation-right-hand 98 %; saturation-foot 95 % | | AAP 2025, Pediatrics 155:e2024069667
          | saturation-right-hand 99 %; saturation-foot 95 % | arrange saturation-screen-unclear-2025 | AAP 2025, Pediatrics 155:e2024069667
          | saturation-right-hand 95 %; saturation-foot 94 % | arrange saturation-screen-unclear-2025 | AAP 2025, Pediatrics 155:e2024069667
          | saturation-right-hand 90 %; saturation-foot 90 % | arrange saturation-screen-unclear-2025 | AAP 2025, Pediatrics 155:e2024069667
          | saturation-right-hand 89 %; saturation-foot 90 % | urgent saturation-screen-failed-2025 | AAP 2025, Pediatrics 155:e2024069667
          | saturation-foot 89 % | urgent saturation-screen-failed-2025 | AAP 2025: below 90 in either limb fails
          | saturation-right-hand 89 % | urgent saturation-screen-failed-2025 | AAP 2025: below 90 in either limb fails
          | saturation-foot 90 % | arrange saturation-one-limb-low | one limb alone does not pass or fail
          | saturation-right-hand 93 %; saturation-foot 93 %; saturation-right-hand 97 %; saturation-foot 96 % | | AAP 2025: the repeat passes
          | saturation-right-hand 93 %; saturation-foot 93 %; saturation-right-hand 94 %; saturation-foot 94 % | urgent saturation-screen-failed-2025 | AAP 2025: the repeat does not pass
          | colour central-cyanosis | urgent central-cyanosis | practice
          | colour central-cyanosis; breathing easy | urgent central-cyanosis | practice
          | colour central-cyanosis; breathing retractions | emergency cyanosis-with-distress | practice
          | colour central-cyanosis; breathing grunting | emergency cyanosis-with-distress | practice
          | colour central-cyanosis; breathing gasping; breathing retractions | emergency cyanosis-with-distress | practice
          | colour acrocyanosis; breathing grunting | urgent breathing-distress | practice
          """)
  void saturationAndColour(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | saturation-right-hand 97 %; saturation-foot 94 % | | 2011, Pediatrics 128:e1259
          | saturation-right-hand 98 %; saturation-foot 94 % | arrange saturation-screen-unclear-2011 | 2011, Pediatrics 128:e1259
          | saturation-right-hand 89 %; saturation-foot 92 % | urgent saturation-screen-failed-2011 | 2011, Pediatrics 128:e1259
          | saturation-right-hand 93 %; saturation-foot 93 %; saturation-right-hand 94 %; saturation-foot 94 % | arrange saturation-screen-unclear-2011 | 2011: a second repeat follows
          """)
  void saturationByTheRulesOf2011(String baby, String findings, String flags, String source) {
    Settings settings = Settings.DEFAULT.with(Setting.SATURATION_SCREEN, "2011");
    check(baby, findings, flags, source, settings);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          age=6 | saturation-right-hand 96 %; saturation-foot 95 % | | BAPM 2024
          age=6 | saturation-right-hand 94 %; saturation-foot 96 % | arrange saturation-screen-unclear-uk | BAPM 2024
          age=6 | saturation-right-hand 99 %; saturation-foot 96 % | arrange saturation-screen-unclear-uk | BAPM 2024
          age=6 | saturation-right-hand 89 %; saturation-foot 96 % | urgent saturation-screen-failed-uk | BAPM 2024
          age=6 | saturation-right-hand 94 %; saturation-foot 94 %; saturation-right-hand 94 %; saturation-foot 94 % | urgent saturation-screen-failed-uk | BAPM 2024
          """)
  void saturationByTheRulesOfTheUk(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source, Settings.DEFAULT.with(Setting.SATURATION_SCREEN, "uk"));
    Assessment assessed =
        Bedside.assess(baby, findings, Settings.DEFAULT.with(Setting.SATURATION_SCREEN, "uk"));
    String remarks = assessed.result("saturation-screen").remarks().toString();
    // It is meant for the first day.
    assertFalse(remarks.contains("24 hours"), remarks);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | murmur none | | practice
          | murmur present | arrange murmur | practice
          | murmur present grade=2 timing=systolic radiation=none | arrange murmur | practice
          | murmur present grade=3 | urgent murmur-with-warning-sign | practice
          | murmur present timing=diastolic | urgent murmur-with-warning-sign | practice
          | murmur present timing=pansystolic | urgent murmur-with-warning-sign | practice
          | murmur present timing=continuous | urgent murmur-with-warning-sign | practice
          | murmur present radiation=axilla | urgent murmur-with-warning-sign | practice
          | murmur present radiation=back,neck | urgent murmur-with-warning-sign | practice
          | murmur present; precordium thrill | urgent murmur-with-warning-sign, urgent thrill-or-right-apex | practice
          | murmur present; colour central-cyanosis | urgent central-cyanosis, urgent murmur-with-low-saturation | practice
          | murmur present; femoral-pulse.left weak | urgent femoral-pulse-weak, urgent murmur-with-low-saturation | practice
          | murmur present; brachial-pulse.left absent | urgent brachial-pulse-weak, urgent murmur-with-low-saturation | practice
          | murmur present; brachio-femoral.left delayed | urgent femoral-pulse-weak, urgent murmur-with-warning-sign | practice
          | murmur present; saturation-foot 94 % | urgent murmur-with-low-saturation, arrange saturation-one-limb-low | practice
          | murmur present; saturation-foot 95 % | arrange murmur | practice
          | murmur present; saturation-right-hand 94 % | urgent murmur-with-low-saturation, arrange saturation-one-limb-low | practice
          | murmur present; saturation-right-hand 95 %; saturation-foot 99 % | urgent murmur-with-low-saturation, arrange saturation-screen-unclear-2025 | practice
          | murmur present; saturation-right-hand 97 %; saturation-foot 97 % | arrange murmur | practice
          | murmur none; precordium thrill | urgent thrill-or-right-apex | practice
          | precordium apex-right | urgent thrill-or-right-apex | practice
          | precordium active | urgent precordium-active | practice
          heart-family-history=yes | murmur none | note heart-family-history | practice
          """)
  void heart(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | barlow.left negative; ortolani.left negative | | NIPE
          | barlow.left positive | urgent hip-unstable | NIPE
          | ortolani.right positive | urgent hip-unstable | NIPE
          presentation=breech | barlow.left positive | urgent hip-unstable | NIPE
          presentation=breech | barlow.left negative; barlow.right negative | arrange hip-risk-nipe | NIPE
          presentation=breech | | arrange hip-risk-nipe | NIPE
          breech-in-last-month=yes presentation=cephalic | | arrange hip-risk-nipe | NIPE
          hip-family-history=yes | | arrange hip-risk-nipe | NIPE
          presentation=cephalic hip-family-history=no breech-in-last-month=no | | | NIPE
          sex=girl | | | AAP 2016: weaker risk
          sex=girl first-born=yes | | note hip-weaker-risks | AAP 2016: weaker risk
          sex=boy first-born=yes | | | AAP 2016: weaker risk
          sex=girl first-born=yes presentation=breech | | arrange hip-risk-nipe | AAP 2016
          sex=girl first-born=yes | barlow.left positive | urgent hip-unstable | AAP 2016
          | hip-click.left present | | a click is not a clunk
          | hip-abduction.left limited | arrange hip-abduction-limited | practice
          | knee-height unequal | arrange knee-height-unequal | practice
          """)
  void hips(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          presentation=breech | | arrange hip-risk-aap | AAP, Pediatrics 2016;138:e20163107
          gestation=34+0 presentation=breech | | arrange hip-risk-aap, arrange glucose-due-bapm | AAP, Pediatrics 2016;138:e20163107
          gestation=33+6 presentation=breech | | arrange hip-risk-aap-preterm | practice
          gestation=33+6 presentation=breech | barlow.left positive | arrange hip-barlow-alone, arrange hip-risk-aap-preterm | practice
          hip-family-history=yes | ortolani.left positive | urgent hip-unstable | AAP 2016
          sex=girl first-born=yes hip-family-history=yes | | arrange hip-risk-aap | AAP 2016
          """)
  void hipsByTheAap(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source, Settings.DEFAULT.with(Setting.HIP_ULTRASOUND, "us"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | lumbosacral clear | | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=yes size=4.9 from-anus=2.5 | | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=yes size=4 from-anus=2 count=1 position=midline | | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=yes size=5 from-anus=2 | arrange lumbosacral-mark | exactly 5 mm is not simple
          | lumbosacral dimple base-visible=yes size=3 from-anus=2.6 | arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=no size=3 from-anus=2 | arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=yes size=3 from-anus=2 count=2 | arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=yes size=3 from-anus=2 position=off-midline | arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=no | arrange lumbosacral-mark | one thing that breaks it is enough
          | lumbosacral dimple base-visible=yes | note lumbosacral-dimple | cannot be told yet
          | lumbosacral dimple base-visible=yes size=3 | note lumbosacral-dimple | cannot be told yet
          | lumbosacral dimple base-visible=yes from-anus=2 | note lumbosacral-dimple | cannot be told yet
          | lumbosacral dimple size=3 from-anus=2 | note lumbosacral-dimple | cannot be told yet
          | lumbosacral dimple base-visible=yes size=tiny from-anus=2 | note lumbosacral-dimple | cannot be told yet
          | lumbosacral dimple | note lumbosacral-dimple | cannot be told yet
          | lumbosacral dimple base-visible=yes size=3 from-anus=2; lumbosacral hair-tuft | arrange lumbosacral-mark | another mark
          | lumbosacral dimple base-visible=yes size=3 from-anus=2; skin haemangioma place=sacrum | arrange lumbosacral-mark, note skin-mark | another mark
          | lumbosacral dimple base-visible=yes size=3 from-anus=2; skin port-wine-stain place=legs,back | arrange lumbosacral-mark, arrange port-wine-stain | another mark
          | lumbosacral dimple base-visible=yes size=3 from-anus=2; skin haemangioma place=face | note skin-mark | a mark elsewhere
          | lumbosacral dimple base-visible=yes size=3 from-anus=2; spine mass | urgent spine-mass, arrange lumbosacral-mark | another mark
          | lumbosacral hair-tuft | arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral haemangioma | arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral skin-tag | arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral leaking | urgent lumbosacral-leaking | Am Fam Physician 2014;90:297
          | lumbosacral dimple base-visible=yes size=3 from-anus=2; lumbosacral leaking | urgent lumbosacral-leaking, arrange lumbosacral-mark | Am Fam Physician 2014;90:297
          | lumbosacral sinus | urgent lumbosacral-sinus | practice
          | ventral-tone floppy | urgent floppy-held-face-down | practice
          """)
  void back(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | abdominal-mass none; kidneys.left not-enlarged | | practice
          | abdominal-mass.left present | arrange abdominal-mass | practice
          | kidneys.left enlarged | arrange abdominal-mass | practice
          | abdomen distended | urgent abdomen-distended | practice
          | inguinal-hernia.left present | arrange inguinal-hernia | practice
          | anterior-fontanelle open-soft-flat length=2 width=3 | | practice
          | anterior-fontanelle bulging | urgent fontanelle-bulging | practice
          | anterior-fontanelle tense | urgent fontanelle-bulging | practice
          | anterior-fontanelle not-palpable | arrange sutures-may-be-fused | practice
          | sutures ridged | arrange sutures-may-be-fused | practice
          | anterior-fontanelle large | arrange fontanelle-large | practice
          | anterior-fontanelle sunken | urgent fontanelle-sunken | practice
          | posterior-fontanelle large | arrange fontanelle-large | practice
          """)
  void abdomenAndFontanelle(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          sex=boy | testis.left descended; testis.right descended | | AUA 2014
          sex=boy | testis.left undescended; testis.right descended | arrange testis-undescended | AUA 2014
          sex=boy | testis.left inguinal; testis.right inguinal | arrange testis-undescended | AUA 2014: felt on both sides
          sex=boy | testis.left undescended; testis.right inguinal | arrange testis-undescended | AUA 2014
          sex=boy | testis.left undescended; testis.right undescended | emergency sex-not-to-be-assigned | AUA 2014, Society for Endocrinology UK 2021
          | testis.left undescended; testis.right undescended | emergency sex-not-to-be-assigned | the sex need not be stated
          sex=boy | testis.left undescended; testis.right descended; penis hypospadias | emergency sex-not-to-be-assigned | AUA 2014
          sex=boy | testis.left descended; testis.right descended; penis hypospadias | arrange hypospadias | practice
          | genital-appearance ambiguous | emergency sex-not-to-be-assigned | Society for Endocrinology UK 2021
          | genital-appearance ambiguous; testis.left undescended | emergency sex-not-to-be-assigned | Society for Endocrinology UK 2021
          sex=girl | labia fused | urgent genital-variant | Am Fam Physician 2014;90:297
          sex=girl | labia large-clitoris | urgent genital-variant | Am Fam Physician 2014;90:297
          sex=boy | penis small | urgent penis-small | Am Fam Physician 2014;90:297
          sex=boy | testis.left hydrocele | | benign
          """)
  void genitalia(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | anus not-patent | emergency anus-not-patent | practice
          | anus displaced | arrange anus-displaced | practice
          age=23.9 | meconium not-yet | | Pediatr Rev 15:319
          age=24 | meconium not-yet | note meconium-not-yet | Pediatr Rev 15:319
          age=47.9 | meconium not-yet | note meconium-not-yet | Pediatr Rev 15:319
          age=48 | meconium not-yet | urgent meconium-late | Pediatr Rev 15:319
          age=12 | meconium not-yet age=48 | urgent meconium-late | the age said beside it counts
          age=60 | meconium not-yet age=20 | | the age said beside it counts
          age=60 | meconium passed age=20 | | Pediatr Rev 15:319
          | meconium not-yet | | asks for the age instead
          | meconium not-yet; abdomen distended | urgent obstruction-signs | Pediatr Rev 15:319
          age=30 | meconium not-yet; abdomen distended | urgent obstruction-signs | Pediatr Rev 15:319
          age=23.9 | urine not-yet | | practice
          age=24 | urine not-yet | urgent urine-late | practice
          | urine not-yet age=24 | urgent urine-late | practice
          age=72 | urine passed | | practice
          """)
  void anusMeconiumAndUrine(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          age=23.9 | jaundice present extent=face | urgent jaundice-first-day | AAP, Pediatrics 2022;150:e2022058859
          age=24 | jaundice present extent=face | urgent jaundice-visible | AAP, Pediatrics 2022;150:e2022058859
          age=5 | colour jaundiced | urgent jaundice-first-day | AAP, Pediatrics 2022;150:e2022058859
          | jaundice present | urgent jaundice-visible | asks for the age
          age=5 | jaundice none | | AAP, Pediatrics 2022;150:e2022058859
          born-at=2026-11-25T00:00 | jaundice present | urgent jaundice-first-day | the age counted from birth
          born-at=2026-11-24T10:30 | jaundice present | urgent jaundice-visible | exactly 24 hours
          """)
  void jaundice(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | heart-rate 190 /min | | AAP, Pediatrics 2015;135:948
          | heart-rate 191 /min | note heart-rate-high | AAP, Pediatrics 2015;135:948
          | heart-rate 100 /min | | AAP, Pediatrics 2015;135:948
          | heart-rate 99 /min | note heart-rate-low | AAP, Pediatrics 2015;135:948
          | heart-rate 99 /min; alertness alert | note heart-rate-low | AAP, Pediatrics 2015;135:948
          | heart-rate 70 /min; alertness asleep-rousable | | AAP 2015: 70 allowed asleep
          | heart-rate 69 /min; alertness asleep-rousable | note heart-rate-low | AAP 2015: 70 allowed asleep
          | respiratory-rate 30 /min | | practice
          | respiratory-rate 29 /min | note respiratory-rate-low | practice
          | respiratory-rate 59 /min | | WHO fast breathing
          | respiratory-rate 60 /min | note respiratory-rate-high | WHO fast breathing
          | respiratory-rate 60 /min; breathing grunting | urgent fast-breathing-with-distress | WHO fast breathing
          | respiratory-rate 59 /min; breathing grunting | urgent breathing-distress | WHO fast breathing
          | respiratory-rate 60 /min; breathing periodic | note respiratory-rate-high | WHO fast breathing
          | temperature 36.5 °C | | WHO 1997
          | temperature 36.49 °C | note hypothermia-mild | WHO 1997
          | temperature 36 °C | note hypothermia-mild | WHO 1997
          | temperature 35.9 °C | urgent hypothermia-moderate | WHO 1997
          | temperature 32 °C | urgent hypothermia-moderate | WHO 1997
          | temperature 31.9 °C | emergency hypothermia-severe | WHO 1997
          | temperature 37.5 °C | | WHO 1997
          | temperature 37.6 °C | note temperature-high | WHO 1997
          | temperature 37.9 °C | note temperature-high | WHO 1997
          | temperature 38 °C | urgent fever | practice
          | capillary-refill 3 s | | Strozik 1997
          | capillary-refill 3.5 s | urgent capillary-refill-slow | Strozik 1997
          | capillary-refill < 2 s | | a bound: the largest it can be counts
          | capillary-refill < 3 s | | a bound: the largest it can be counts
          | capillary-refill <= 3 s | | a bound: the largest it can be counts
          | capillary-refill < 4 s | urgent capillary-refill-slow | a bound: the largest it can be counts
          | capillary-refill > 3 s | urgent capillary-refill-slow | a bound: what is certain counts
          | capillary-refill >= 3 s | | a bound: what is certain counts
          | temperature 35 °C; temperature 36.8 °C | | the last measurement stands
          """)
  void vitalSigns(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | clavicle.left intact | | practice
          | clavicle.left crepitus | arrange clavicle-injury | practice
          | clavicle.left step-off; clavicle.left crepitus | arrange clavicle-injury | practice
          | clavicle.left fracture | arrange clavicle-injury | practice
          | clavicle.left swelling | arrange clavicle-injury | practice
          | moro symmetric | | practice
          | moro.left asymmetric | urgent moro-abnormal | practice
          | moro absent | urgent moro-abnormal | practice
          | moro.left asymmetric; arm-movement.left reduced | urgent moro-asymmetric-with-weak-arm | practice
          | moro absent; arm-movement.left reduced | urgent moro-abnormal, arrange arm-movement-reduced | practice
          | arm-movement.left reduced | arrange arm-movement-reduced | practice
          | scalp subgaleal-swelling | emergency subgaleal-swelling | practice
          | scalp.left cephalohaematoma | note cephalohaematoma | practice
          | scalp caput | note scalp-bruise | practice
          | palate intact palpated=yes | | practice
          | palate cleft | arrange cleft-palate | practice
          | palate submucous-cleft | arrange cleft-palate | practice
          | palate high-arched | note palate-high | practice
          """)
  void claviclesScalpAndPalate(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | cord-vessels two | note two-vessel-cord | practice
          | cord-vessels not-assessable | | practice
          | ear-position.left low-set; ear-position.right low-set | note ear-low-set | one feature on both sides is one
          | ear-position.left low-set; palm-creases.left single-crease | arrange pattern-of-small-anomalies | practice
          | eye-spacing hypertelorism; appearance dysmorphic | arrange pattern-of-small-anomalies | practice
          | eye-spacing hypotelorism; appearance dysmorphic | arrange appearance-dysmorphic, note eye-spacing-unusual | practice
          | cord-vessels two; toes.left fused-digits | arrange pattern-of-small-anomalies, arrange digits-unusual, note two-vessel-cord | practice
          | fingers.left extra-digit; toes.left fused-digits | arrange digits-unusual | digits are one feature
          | fingers.left missing-digit; appearance dysmorphic | arrange appearance-dysmorphic, arrange digits-unusual | practice
          """)
  void patterns(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | breathing easy | | practice
          | breathing retractions site=subcostal | urgent breathing-distress | practice
          | breathing nasal-flaring; breathing grunting | urgent breathing-distress | practice
          | breathing gasping; breathing grunting | emergency gasping-or-apnoea | practice
          | breathing apnoea | emergency gasping-or-apnoea | practice
          | breath-sounds.left reduced | urgent breath-sounds-reduced | practice
          | movements seizure | emergency seizure | practice
          | movements jittery | urgent jittery | practice
          | alertness unresponsive | emergency unresponsive | practice
          | alertness lethargic | urgent lethargic | practice
          | alertness irritable | urgent irritable | practice
          | skin petechiae; skin milia | urgent petechiae | practice
          | skin vesicles; skin bruising | urgent vesicles, note skin-mark | practice
          | tone low; ventral-tone floppy | urgent tone-low, urgent floppy-held-face-down | practice
          | foot-position.left club-foot | arrange club-foot | practice
          """)
  void breathingAlertnessSkinAndTone(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  // Lines of the standard for a boy at 40+0 (Lancet 2014;384:857): 3rd 2.63, 10th 2.88, 90th 3.91
  // kg;
  // head 3rd 32.2, 97th 36.6 cm; length of a girl at 40+0: SD -2 45.9, SD 2 52.4 cm.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          sex=boy gestation=40+0 age=2 first-born=no | weight 2600 g | arrange severely-small | Lancet 2014;384:857
          sex=boy gestation=40+0 age=2 first-born=no | weight 2680 g | note small | Lancet 2014;384:857
          sex=boy gestation=40+0 age=2 first-born=no | weight 2850 g | note small | Lancet 2014;384:857
          sex=boy gestation=40+0 age=2 first-born=no | weight 2910 g | | Lancet 2014;384:857
          sex=boy gestation=40+0 age=2 first-born=no | weight 3850 g | | Lancet 2014;384:857
          sex=boy gestation=40+0 age=2 first-born=no | weight 3980 g | note large | Lancet 2014;384:857
          sex=boy gestation=40+0 birth-weight=2600 | | arrange severely-small | Lancet 2014;384:857
          sex=boy gestation=40+0 | head-circumference 32.1 cm | arrange head-outside | Lancet 2014;384:857
          sex=boy gestation=40+0 | head-circumference 32.3 cm | | Lancet 2014;384:857
          sex=boy gestation=40+0 | head-circumference 36.5 cm | | Lancet 2014;384:857
          sex=boy gestation=40+0 | head-circumference 36.7 cm | arrange head-outside | Lancet 2014;384:857
          sex=girl gestation=40+0 | length 45.9 cm | note length-outside | Lancet 2014;384:857
          sex=girl gestation=40+0 | length 49 cm | | Lancet 2014;384:857
          sex=girl gestation=40+0 | length 52.5 cm | note length-outside | Lancet 2014;384:857
          gestation=40+0 | weight 1800 g | | no sex, no standard
          sex=boy | weight 1800 g | | no gestation, no standard
          sex=boy gestation=40+0 | maturity-score 35 | | J Pediatr 1991;119:417
          sex=boy gestation=40+1 | maturity-score 35 | note maturity-differs | J Pediatr 1991;119:417
          | maturity-score 35 | | asks for the gestation
          | apgar-5 7 | | ACOG 644, 2015
          | apgar-5 6 | note apgar-low | ACOG 644, 2015
          birth-weight=3000 | weight 2700 g | | NICE NG75 1.1.2: more than 10 %
          birth-weight=3000 | weight 2699 g | arrange weight-loss | NICE NG75 1.1.2
          birth-weight=3000 | weight 3400 g | | NICE NG75 1.1.2
          """)
  void figures(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          sex=boy gestation=40+0 birth-weight=2550 | | note small | WHO at birth: z -1.77, 4th centile (INTERGROWTH-21st: 2nd)
          sex=boy gestation=36+6 birth-weight=1900 | | arrange severely-small, arrange glucose-due-bapm | preterm: INTERGROWTH-21st is used
          """)
  void figuresByTheWhoStandard(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source, Settings.DEFAULT.with(Setting.SIZE_STANDARD, "who"));
  }

  // NICE NG75, 2017: more than 10 % lost (1.1.2), not back to birth weight by 3 weeks (1.1.1).
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          birth-weight=3000 age=60 | weight 2700 g | | NG75: exactly 10 % is not more
          birth-weight=3000 age=60 | weight 2699 g | arrange weight-loss | NG75 1.1.2
          birth-weight=3000 age=503 | weight 2990 g | | NG75 1.1.1: before 3 weeks
          birth-weight=3000 age=504 | weight 2999 g | arrange weight-not-regained | NG75 1.1.1: at 3 weeks
          birth-weight=3000 age=504 | weight 3000 g | | regained
          birth-weight=3000 age=600 | weight 2600 g | arrange weight-loss, arrange weight-not-regained | both
          """)
  void weightLossAndRegain(String baby, String findings, String flags, String source) {
    check(baby, findings, flags, source);
  }
}
