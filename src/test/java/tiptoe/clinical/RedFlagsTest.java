package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dangerous cases, each with the flags it must raise, by when, and what the row rests on. */
class RedFlagsTest {
  private static String flags(String baby, String findings) {
    return Bedside.assess(baby, findings).flags().stream()
        .map(flag -> flag.level().id() + " " + flag.when() + " " + flag.rule())
        .collect(Collectors.joining(", "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | heart-rate 280 /min | urgent now heart-rate-very-high | practice: supraventricular tachycardia
          | heart-rate 220 /min | urgent now heart-rate-very-high | practice
          | heart-rate 45 /min | urgent now heart-rate-very-low | Newborn life support 2021: below 60
          | heart-rate 59 /min; alertness asleep-rousable | urgent now heart-rate-very-low | Newborn life support 2021: below 60, asleep or not
          | respiratory-rate 90 /min | urgent now respiratory-rate-very-high | practice
          | respiratory-rate 80 /min | urgent now respiratory-rate-very-high | practice
          | respiratory-rate 12 /min | urgent now respiratory-rate-very-low | practice
          | capillary-refill 9 s | urgent now capillary-refill-very-slow | practice
          | temperature 31 °C | emergency now hypothermia-severe | WHO 1997: severe below 32
          | temperature 35.9 °C | urgent now hypothermia-moderate | NICE NG195 clinical indicator: below 36
          | temperature 38.1 °C | urgent now fever | NICE NG195 clinical indicator: above 38
          | saturation-right-hand 80 %; saturation-foot 80 % | urgent now saturation-screen-failed-2025 | AAP 2025: below 90
          | saturation-foot 91 % | arrange now saturation-one-limb-low | the screen needs right hand and foot
          | saturation-right-hand 98 %; saturation-foot 97 %; saturation-right-hand 80 %; saturation-foot 79 % | urgent now saturation-screen-failed-2025 | a pass does not cover what comes behind it
          | colour central-cyanosis | urgent now central-cyanosis | practice
          | colour central-cyanosis; breathing grunting | emergency now cyanosis-with-distress | practice
          | capillary-refill 5 s; colour pale; alertness lethargic | emergency now poor-perfusion | NICE NG195 red flag: signs of shock
          | capillary-refill 4 s; femoral-pulse.left absent; femoral-pulse.right absent | emergency now poor-perfusion | NICE NG195 red flag: signs of shock
          | colour mottled; alertness unresponsive | emergency now poor-perfusion | NICE NG195 red flag: signs of shock
          sex=girl | labia fused; labia large-clitoris | emergency now sex-not-to-be-assigned | Society for Endocrinology UK 2021
          gestation=28+0 sex=boy | testis.left undescended; testis.right undescended | arrange at 6 to 8 weeks of age testes-not-yet-down | AUA 2014: expected before term
          gestation=40+0 sex=boy | testis.left undescended; testis.right undescended | emergency now sex-not-to-be-assigned | NIPE: both undescended, within 24 hours
          gestation=28+0 sex=boy | testis.left undescended; testis.right undescended; penis hypospadias | emergency now sex-not-to-be-assigned | AUA 2014
          | apgar-10 3 | urgent now apgar-10-low | Azzopardi 2009: cooling within 6 hours
          | apgar-5 4; apgar-10 5 | urgent now apgar-10-low | Azzopardi 2009: 5 or less at 10 minutes
          | apgar-5 3 | urgent now apgar-5-very-low | ACOG 644, 2015
          | movements jittery | urgent now jittery | practice: glucose now
          | movements seizure | emergency now seizure | NICE NG195 red flag
          | breathing apnoea | emergency now gasping-or-apnoea | NICE NG195 red flag
          age=48 | meconium not-yet | urgent today meconium-late | Clark 1977
          age=60 | meconium passed age=50 | urgent today meconium-late | Clark 1977: passed at fifty hours is late
          | abdomen distended | urgent today abdomen-distended | practice
          age=30 | abdomen distended; meconium not-yet | urgent now obstruction-signs | practice
          age=30 | jaundice present extent=palms-soles | urgent within 6 hours jaundice-visible | NICE CG98
          age=10 | jaundice present extent=face | urgent within 2 hours jaundice-first-day | NICE CG98
          age=60 | jaundice present extent=legs; cry high-pitched | emergency now jaundice-with-brain-signs | NICE CG98
          | anterior-fontanelle sunken | urgent today fontanelle-sunken | practice
          | anterior-fontanelle bulging; head-shape macrocephalic | urgent now raised-pressure-signs | practice
          | breath-sounds.left stridor | urgent now stridor | practice
          | breath-sounds.left stridor; breathing retractions | emergency now airway-obstructed | practice
          | nostrils.left blocked; nostrils.right blocked | urgent now nostrils-blocked-both | practice
          | nostrils.left blocked; nostrils.right patent | arrange today nostril-blocked | practice
          | nostrils.right blocked | arrange today nostril-blocked | practice: one side alone
          | nostrils.left blocked | arrange today nostril-blocked | practice: one side alone
          | nostrils.left blocked; nostrils.right blocked; colour central-cyanosis | emergency now cyanosis-with-distress | practice
          | suck absent | urgent today suck-absent | practice
          | cry absent | urgent now cry-absent | practice
          | cry high-pitched | urgent today cry-abnormal | practice
          | tone low; suck weak | urgent now floppy-with-poor-suck | practice
          | heart-sounds gallop | urgent now heart-sounds-abnormal | practice
          | heart-sounds muffled | urgent now heart-sounds-abnormal | practice
          | jaw small; palate cleft | urgent now small-jaw-with-cleft | practice
          | eyes.left discharge | urgent today eye-discharge | practice
          | eyes.left discharge; eyes.left swollen-lids | urgent now eye-discharge-with-swelling | practice
          | abdomen scaphoid; breathing retractions | emergency now diaphragmatic-hernia-signs | practice
          | abdomen scaphoid | urgent now abdomen-scaphoid | practice
          | lips cleft-lip | arrange within 24 hours cleft-lip | practice
          | eyes.left coloboma | arrange before discharge coloboma | practice
          | penis hypospadias | arrange before discharge hypospadias | practice
          | skin port-wine-stain place=face | arrange before discharge port-wine-stain | practice
          | foot-position.left rocker-bottom | arrange before discharge rocker-bottom-foot | practice
          | anus displaced | arrange today anus-displaced | practice
          | liver enlarged | arrange today large-liver-or-spleen | practice
          | ear-form.left no-canal | arrange before discharge ear-canal-closed | practice
          | face facial-palsy | arrange before discharge facial-palsy | practice
          | arm-movement.left reduced | arrange today arm-movement-reduced | practice
          | moro.left asymmetric; arm-movement.left reduced | urgent today moro-asymmetric-with-weak-arm | practice
          | murmur present | arrange within 24 hours or before discharge murmur | NIPE handbook
          | murmur present; saturation-right-hand 92 %; saturation-foot 92 % | urgent now murmur-with-low-saturation, arrange in 1 hour saturation-screen-unclear-2025 | practice
          | skin vesicles | urgent now vesicles | practice
          | umbilical-skin redness | emergency now umbilical-redness | practice
          | scalp subgaleal-swelling | emergency now subgaleal-swelling | practice
          sex=girl gestation=40+0 birth-weight=2000 first-born=no | | arrange now severely-small | BAPM 2017: glucose 2 to 4 hours after birth
          co-twin-breech=yes | | arrange at 4 to 6 weeks of age hip-risk-nipe | NIPE handbook
          gestation=31+0 presentation=breech | | arrange at 38 to 40 weeks corrected hip-risk-nipe-preterm | practice
          """)
  void raisesWhatAWardWouldCallItByTheTimeItNeeds(
      String baby, String findings, String flags, String source) {
    assertNotNull(source);
    assertEquals(flags, flags(baby, findings));
  }

  // NICE NG195, box 2: what is named a red flag there and can be seen at an examination is an
  // emergency here, and every other clinical indicator of it is urgent.
  @ParameterizedTest
  @CsvSource({
    "breathing apnoea, emergency",
    "movements seizure, emergency",
    "capillary-refill 4 s; colour pale; alertness lethargic, emergency",
    "alertness lethargic, urgent",
    "alertness irritable, urgent",
    "tone low, urgent",
    "ventral-tone floppy, urgent",
    "abdomen distended, urgent",
    "breathing grunting, urgent",
    "colour central-cyanosis, urgent",
    "temperature 35.9 °C, urgent",
    "temperature 38.1 °C, urgent",
  })
  void agreesWithTheClinicalIndicatorsOfNg195(String findings, String level) {
    assertEquals(level, Bedside.assess("", findings).flags().get(0).level().id());
  }
}
