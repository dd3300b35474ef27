package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.language.NumberWords;
import tiptoe.language.SecondReading.Told;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

class ToldReaderTest {
  private static TypedText typed;
  private static LayLexicon lay;
  private static ToldLexicon lexicon;
  private static ToldItems items;

  @BeforeAll
  static void load() throws Exception {
    typed = TypedText.load(Path.of("grammars/spellings.txt"));
    lay = LayLexiconReader.shipped(Protocol.standard(), typed::words);
    lexicon = ToldLexicon.shipped(Protocol.standard(), typed::words);
    items = new ToldItems(lexicon, lay);
  }

  private static Told told(String text) {
    List<String> words = typed.utterance(text);
    return new ToldReader(new ToldWords(items, Protocol.standard(), words)).read();
  }

  private static String said(Told.Said said) {
    String value =
        said.value() != null
            ? said.value()
            : String.join(
                "+",
                said.numbers().stream()
                    .map(number -> String.valueOf(NumberWords.readings(number.words()).get(0)))
                    .toList());
    return said.subject() + "=" + value + (said.sure() ? "" : "?");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          mum was positive for group b strep | group-b-strep=positive
          baby's group ab positive, dat negative | blood-group=ab-positive direct-antiglobulin=negative
          nobody on either side of the family ever had hip trouble | hip-family-history=no
          nothing for hips or eyes in the family | eye-family-history=no hip-family-history=no
          no family history, heart, eyes, hearing, none of it | eye-family-history=no hearing-family-history=no heart-family-history=no
          this is their first baby and there is no family history of hips | first-born=yes hip-family-history=no
          the two of them gave verbal consent | consent-by=parents consent-form=verbal consent=given
          no family history of hips, hearts or eyes | eye-family-history=no heart-family-history=no hip-family-history=no
          she didn't have antibiotics in labour | intrapartum-antibiotics=no
          first baby, born by vacuum, beg pardon, by forceps | birth-mode=forceps first-born=yes
          mummy had diabetes in the pregnancy, gestational | maternal-diabetes=gestational
          this one was breech, sister | presentation=breech
          she was breech, so she arrived by caesarean section | birth-mode=caesarean presentation=breech
          he isn't your first, he's got a big sister waiting at home | first-born=no
          you didn't have a fever around the birth | maternal-fever=no
          no heart conditions from birth on either side, and no childhood eye problems | eye-family-history=no heart-family-history=no
          she's having some breast and some bottle | feeding=mixed
          told the parents about the heart and the hips | told-heart=yes told-hips=yes
          the leaflet and the safety net advice were given | leaflet=given safety-net=given
          urology referral still needs doing, kidney ultrasound too | referral-urology=due renal-scan=due
          haven't told the parents about the eyes yet | told-eyes=not-yet
          parents said no thanks to vitamin k | vitamin-k=declined
          apgars were five, eight and nine at one, five and ten minutes | apgar-10=9.0 apgar-1=5.0 apgar-5=8.0
          apgars nine and nine, one minute and five, easy start to life | apgar-1=9.0 apgar-5=9.0
          she had her vitamin k by mouth | vitamin-k=by-mouth
          pulling in under the ribs, i count seventy two | respiratory-rate=72.0
          birth weight three thousand and eighty, today two thousand eight hundred, as they all do | birth-weight=3080.0 weight=2800.0
          she's three thousand two hundred grams today and she was three thousand four hundred born | birth-weight=3400.0 weight=3200.0
          she's breastfed, no vomiting, and no concerns from mum, which i always ask | feeding=breast parental-concern=no vomiting=no
          no cardiac massage and no ventilation needed, so both are a no | cardiopulmonary-resuscitation=no mechanical-ventilation=no
          length fifty one, two people to measure it | length=51.0
          breathing forty-four times a minute, but that's babies for you | respiratory-rate=44.0
          right hand ninety six, foot ninety one | saturation-foot=91.0 saturation-right-hand=96.0
          five fingers on the right hand and five toes on the foot | ''
          square window two, posture three, breast two | maturity-breast=2.0 maturity-posture=3.0 maturity-square-window=2.0
          no poo yet and she's thirty hours | age=30.0
          no maternal fever, labour spontaneous, nothing there to score | maternal-fever=no spontaneous-labour=yes
          serum bilirubin two hundred, plotted against hours and not days | bilirubin=200.0
          weight three thousand, birth weight three thousand one hundred, seven per cent down | birth-weight=3100.0 weight=3000.0
          no risk factors for jaundice harming the brain, mum ab positive | maternal-blood-group=ab-positive neurotoxicity-risk=no
          the eyes are clear, and nobody in the family had cataracts | eye-family-history=no
          your brother was born with a heart defect, mum | heart-family-history=yes
          her sister's wee one had a hole in the heart | ''
          dad's sister wore a harness for her hips, and nobody deaf | hearing-family-history=no hip-family-history=yes?
          mum's waters had gone twenty two hours before he was born | membranes-ruptured=22.0
          and i was being sick all night | ''
          there is an eye problem in the family and we look carefully | eye-family-history=yes
          mum is o negative and he's a positive, coombs positive too | blood-group=a-positive direct-antiglobulin=positive maternal-blood-group=o-negative
          forceps delivery at thirty nine weeks, three thousand six hundred grams | birth-mode=forceps birth-weight=3600.0 gestation=39.0
          eye and ear score three, and if my sums are right that's a maturity score of thirty four | maturity-eye-ear=3.0 maturity-score=34.0
          about twenty six hours old | age=26.0
          he's refusing the breast, and he's vomited with streaks of blood in it, which may well be yours | feeding=breast feeds=refused vomiting=blood?
          i've not done the orthopaedics referral yet | referral-orthopaedics=due
          hasn't had his vitamin k yet | vitamin-k=due
          i've still to refer him to the eye clinic | referral-ophthalmology=due
          she needs a hip scan, so i've requested it | hip-scan=requested
          i've not told them the results yet | told-result=not-yet
          i've told you both about the hips, haven't i | told-hips=yes
          head ultrasound's done, and the tummy one's been requested | abdominal-scan=requested head-scan=done
          you're o negative, mam | maternal-blood-group=o-negative
          the other twin's had no infection, and her co twin wasn't breech | co-twin-breech=no twin-infection=no
          nobody in the family with childhood cataracts or retinoblastoma | eye-family-history=no
          no strep on the swab, that's negative | group-b-strep=negative
          dad's consent, verbal | consent-by=father consent-form=verbal consent=given
          what we've got here is a baby girl | sex=girl
          she was thirty nine plus two when she was born | gestation=39.0+2.0
          a day and a half old | age=1.5
          he got four at one minute, six at five and eight at ten | apgar-10=8.0 apgar-1=4.0 apgar-5=6.0
          i press on the breastbone and let go, and that's two seconds | capillary-refill=2.0
          an apnoea, fifteen seconds that was | ''
          nicely shaped head, thirty five centimetres | head-circumference=35.0
          square window two, which they don't always like | maturity-square-window=2.0
          a heart rate of a hundred and eighty in a screaming baby tells you nothing | ''
          no wet nappy yet at twenty six hours old | age=26.0
          last baby was four kilos, this one three thousand two hundred grams | weight=3200.0?
          four kilos, that was her last baby | ''
          today's weight three point three one, that's three thousand three hundred and ten grams | weight=3.31
          skin bili at twenty hours was one hundred and forty | bilirubin=140.0
          was breech at thirty seven weeks and they turned him, so cephalic at delivery | breech-in-last-month=yes presentation=cephalic
          waters went before any pains started, twenty six hours before the birth | membranes-ruptured=26.0 prelabour-rupture=yes
          twins, and it was the other one that was lying breech | co-twin-breech=yes multiple=yes
          no diabetes, mum, no beta blockers, no | maternal-beta-blocker=no? maternal-diabetes=no
          the wee girl with the machine was round, hearing screen passed | hearing-screen=passed
          term plus three | gestation=40.0+3.0
          nothing in the family for kidneys, nothing for eyes, asked both sides | eye-family-history=no kidney-family-history=no
          nothing on either side with hips | hip-family-history=no
          hearing test was passed before they left hospital | hearing-screen=passed
          the hearing screen hasn't been passed | ''
          renal ultrasound requested for next week | renal-scan=requested
          the booklet's in her hands | leaflet=given
          no leaflet given | ''
          labour commenced of its own accord | spontaneous-labour=yes
          an older sister required the blue lights in her first week | sibling-phototherapy=yes
          mum had no fever in labour and no evidence of sepsis | maternal-fever=no maternal-sepsis=no
          mum's well and he has no sign of sepsis | ''
          the bilirubin on the handheld device reads two hundred and ten | bilirubin=210.0
          birth weight was documented as three thousand and forty grams | birth-weight=3040.0
          weight on our scales, three thousand and sixty grams | weight=3060.0
          head circumference, the largest is thirty five | head-circumference=35.0
          waters were away before contractions ever started | prelabour-rupture=yes
          parents have not yet been told about the hips | told-hips=not-yet
          neither of her parents has any worries | parental-concern=no
          required cardiac massage at birth | cardiopulmonary-resuscitation=yes
          did not need cardiac massage or any resuscitation | cardiopulmonary-resuscitation=no
          born at three point two kilos | birth-weight=3.2
          three point two kilos | weight=3.2
          head circumference thirty six, tape slipped, thirty five and a half | head-circumference=35.5
          right hand sats ninety seven, limit is ninety five | saturation-right-hand=97.0
          blood glucose, first one two point one, second one three point four | glucose=2.1 glucose=3.4
          antenatal scans, a dilated renal pelvis at thirty two weeks | antenatal-renal-dilatation=yes
          hepatitis b in mum, negative | maternal-hepatitis-b=negative
          hip family history, negative | hip-family-history=no
          cardiopulmonary resuscitation, none needed | cardiopulmonary-resuscitation=no
          chorioamnionitis, no | chorioamnionitis=no?
          weighed three point two kilos at birth | birth-weight=3.2
          thirty six and five weeks | gestation=36.0+5.0
          thirty nine and two | gestation=39.0+2.0?
          baby boy, thirty nine and two | gestation=39.0+2.0 sex=boy
          at thirty eight weeks | gestation=38.0?
          twin b, and the co-twin was breech | co-twin-breech=yes multiple=yes
          consent, verbal, given by mum | consent-by=mother consent-form=verbal consent=given
          heart is regular, one thirty two a minute | heart-rate=132.0
          feeding poorly since last night, we'll sort it out together | feeds=poorly
          mum's pulse is ninety, his heart rate is one forty | heart-rate=140.0
          previous section, vaginal this time | birth-mode=vaginal
          diabetes, none | maternal-diabetes=no
          no one in the family with dodgy hips, mum and dad both say | hip-family-history=no
          maternal diabetes gestational | maternal-diabetes=gestational
          healthy baby girl forty weeks | gestation=40.0 sex=girl
          consent written from mum | consent-by=mother consent-form=written consent=given
          bilirubin on day three, one hundred and ten | bilirubin=110.0
          attempted ventouse, then forceps | birth-mode=forceps
          round his head is thirty five and a half centimetres | head-circumference=35.5
          you tell me she's been feeding poorly | feeds=poorly
          you tell me if she's feeding poorly | ''
          there's a neurotoxicity risk here | neurotoxicity-risk=yes
          none of the neurotoxicity risk factors | neurotoxicity-risk=no
          press on his breastbone and it's back in two seconds | capillary-refill=2.0
          she's breastfed with formula top ups | feeding=mixed
          cardiology has my referral | referral-cardiology=made
          a single baby, head first | multiple=no presentation=cephalic
          """)
  void isToldByItself(String text, String expected) {
    TreeSet<String> found = new TreeSet<>();
    told(text).said().forEach(said -> found.add(said(said)));
    assertEquals(expected, String.join(" ", found));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          just shy of thirty nine weeks
          did anybody in the family have hip problems
          breech babies often have lax hips
          my brother had hip trouble as a baby
          his sister was born by forceps
          the sister was breech
          that baby had a temperature of thirty eight
          ask whether mum had diabetes in the pregnancy
          the bilirubin from the baby in room eleven
          glucose one two point one
          mum's been vomiting
          mum had her hep b jab
          mum was ventilated after the birth
          mum's pulse is ninety
          dad's a twin himself
          dad's on sertraline
          i was a forceps delivery
          i had it when i did the twins
          theatre just rang, they want someone for a section
          that baby weighed four point two kilos
          a heart rate of one twenty to one sixty
          weight is down four percent
          at twenty eight weeks she had a bleed
          that's the twenty eight weeker's chart
          consent for the photo was given
          mum gave consent for photographs
          mum had a negative swab
          hepatitis b in
          at the thirty four week scan
          antibiotics for thirty six hours
          trial of forceps
          she was breech at thirty weeks
          was breech but turned
          mum was born by forceps herself
          i weighed four kilos at birth
          temperature of the room is twenty six
          third baby today
          his brother had a neurotoxicity risk
          mum was on the ventilator
          """)
  void isNotTold(String text) {
    assertEquals(List.of(), told(text).said());
  }

  @Test
  void twoNumbersOfOneThingCountForNothing() {
    Told told = told("temperature thirty seven point two, hmm, thirty eight point two");
    assertEquals(List.of(), told.said());
    assertEquals(1, told.contested().size());
  }
}
