package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Hypothesis.Rival;
import tiptoe.speech.Word;

/** The decision on evidence typed in by hand; the limits of these tests are not those in use. */
class UtteranceVerifierTest {
  private static final VerifierLimits LIMITS =
      new VerifierLimits(-10, -25, -20, 1.5, -5, 0.2, 3, 0.9, 5);
  private static final UtteranceVerifier VERIFIER = new UtteranceVerifier(LIMITS);

  /** Seconds of filler, of phrase; the support of the whole; what becomes of it and why. */
  @ParameterizedTest(name = "{0} s filler, {1} s phrase, support {2}: {3}")
  @CsvSource(
      nullValues = "-",
      value = {
        "0.0, 1.0,    5, ACCEPTED, -",
        "0.0, 1.0,  -10, ACCEPTED, -",
        "0.0, 1.0,  -11, UNSURE,   does not sound much like the phrase",
        "0.0, 2.0,  -19, UNSURE,   does not sound much like the phrase",
        "0.0, 1.0,  -21, IGNORED,  sounds like other speech",
        "0.0, 2.0,  -20, UNSURE,   does not sound much like the phrase",
        "0.5, 1.0,    5, UNSURE,   other speech beside the phrase",
        "0.5, 1.0,  -15, UNSURE,   other speech beside the phrase",
        "0.5, 1.0,  -25, IGNORED,  sounds like other speech",
        "1.5, 1.0,    5, IGNORED,  mostly other speech",
        "1.5, 0.0,    -, IGNORED,  no phrase of the examination",
        "0.0, 1.0,    -, ACCEPTED, -",
        "0.5, 1.0,    -, UNSURE,   other speech beside the phrase",
      })
  void judgesByWhatWasHeard(
      double filler, double phrase, Double support, Outcome outcome, String reason) {
    assertDecided(
        outcome, reason == null ? "" : reason, decide(utterance(filler, phrase, support)));
  }

  @Test
  void namesTheWordsThatAreNearlyAsLikely() {
    List<Rival> rivals =
        List.of(
            new Rival("moro not done", 0.7),
            new Rival("barlow not done", 1.5),
            new Rival("tone not done", 1.6));

    assertEquals(
        List.of("moro not done", "barlow not done"),
        VERIFIER.rivals(utterance(0, 1, 3.0).weighed(3, rivals)));
    assertEquals(List.of(), VERIFIER.rivals(utterance(0, 1, null)));
  }

  /** Support, seconds of words, of filler, and number of words; whether they count. */
  @ParameterizedTest(name = "support {0}, {1} s of {3} words, {2} s of filler: {4}")
  @CsvSource({
    "-14, 3.0, 0.0, 4, true",
    "-16, 3.0, 0.0, 4, false",
    "  5, 3.0, 0.7, 4, true",
    "  5, 3.0, 0.8, 4, false",
    "  5, 3.0, 0.0, 2, false",
  })
  void freeWordingsCountOnlyWhereTheyFitTheSound(
      double support, double seconds, double filler, int words, boolean counts) {
    assertEquals(counts, VERIFIER.offered(free(support, seconds, filler, words, null)).isPresent());
  }

  @Test
  void phrasesAreDoubtedWhereFreeWordingsFitMuchBetter() {
    assertEquals(Optional.empty(), VERIFIER.better(free(4, 3, 0, 4, 0.0)));
    assertEquals("word word word word", VERIFIER.better(free(6, 3, 0, 4, 0.0)).orElseThrow());
    assertEquals(Optional.empty(), VERIFIER.better(free(6, 3, 0, 4, null)));
    assertEquals(Optional.empty(), VERIFIER.better(utterance(0, 1, 0.0)));
  }

  @Test
  void aPhraseBesideOtherSpeechIsIgnoredWhereNotEvenFreeWordingsFit() {
    Hypothesis phrase = utterance(0.5, 1, 5.0);
    Hypothesis fits = free(-14, 3, 0, 4, null).freely().orElseThrow();
    Hypothesis fitsNot = free(-16, 3, 0, 4, null).freely().orElseThrow();

    assertEquals(Outcome.UNSURE, decide(phrase.freely(fits)).outcome());
    assertEquals(Outcome.IGNORED, decide(phrase.freely(fitsNot)).outcome());
    assertEquals(Outcome.ACCEPTED, decide(utterance(0, 1, 5.0).freely(fitsNot)).outcome());
  }

  @Test
  void phrasesMayFitLessWellWhereFreeWordingsDoNotFitBetter() {
    Hypothesis other = free(-30, 1, 0, 4, null).freely().orElseThrow();

    assertEquals(Outcome.UNSURE, outcome(utterance(0, 1, -14.0)));
    assertEquals(Outcome.ACCEPTED, outcome(utterance(0, 1, -14.0).freely(other)));
    assertEquals(Outcome.ACCEPTED, outcome(utterance(0, 1, -25.0).freely(other)));
    assertEquals(Outcome.IGNORED, outcome(utterance(0, 1, -26.0).freely(other)));
    assertEquals(Outcome.UNSURE, outcome(utterance(0, 0.8, -14.0).freely(other)));
    assertEquals(Outcome.IGNORED, outcome(utterance(0.2, 1, -24.0).freely(other)));
  }

  @Test
  void freeWordingsOfAMomentOnlyContest() {
    Hypothesis other = free(9, 0.8, 0, 4, null).freely().orElseThrow();
    Hypothesis moment = utterance(0, 0.8, 5.0).freely(other);

    assertEquals(Optional.empty(), VERIFIER.offered(moment));
    assertEquals(
        "word word word word", VERIFIER.better(utterance(0, 0.8, 3.0).freely(other)).get());
  }

  @Test
  void looksAtTheSameWordsOnce() {
    List<List<String>> read = new ArrayList<>();
    UtteranceVerifier.standard()
        .decide(
            free(5, 3, 0, 4, -12.0),
            words -> {
              read.add(words);
              return interpret(words);
            },
            false);
    assertEquals(Set.copyOf(read).size(), read.size(), read.toString());
  }

  private static UtteranceVerifier.Decision decide(Hypothesis utterance) {
    return VERIFIER.decide(utterance, UtteranceVerifierTest::interpret, false);
  }

  /** Every text means a finding of its own, but singular and plural the same. */
  private static Interpretation interpret(List<String> words) {
    List<Meaning> finding =
        words.isEmpty()
            ? List.of()
            : List.of(
                new Meaning.States(
                    Finding.of("step", null, String.join(" ", words).replaceFirst("s$", "")),
                    false));
    return new Interpretation(finding, List.of(), Dialogue.START);
  }

  private static Outcome outcome(Hypothesis utterance) {
    return decide(utterance).outcome();
  }

  private static Hypothesis free(
      double support, double seconds, double filler, int words, Double ofPhrases) {
    List<Word> said = new ArrayList<>();
    for (int i = 0; i < words; i++) {
      said.add(new Word("word", i * seconds / words, (i + 1) * seconds / words, 1));
    }
    if (filler > 0) {
      said.add(new Word(Hypothesis.FILLER, seconds, seconds + filler, 1));
    }
    return utterance(0, 1, ofPhrases)
        .freely(new Hypothesis(0, seconds + filler, said).weighed(support, List.of()));
  }

  /** Support of free wordings for a second, beside other speech alone; the limits in use. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({"0, ACCEPTED", "-3, ACCEPTED", "-6, UNSURE", "-9, IGNORED"})
  void whatFreeWordingsAreLikelyToSayIsOfferedHoweverBadlyTheyFit(double support, Outcome outcome) {
    for (Meaning said :
        List.of(
            new Meaning.States(Finding.of("murmur", null, "present"), false),
            new Meaning.Fact("first-born", "yes"))) {
      UtteranceVerifier.Decision decision = freely(support, said);
      assertEquals(outcome, decision.outcome());
      assertEquals(
          outcome == Outcome.IGNORED ? List.of() : List.of(said),
          decision.interpretation().meanings());
    }
  }

  private static UtteranceVerifier.Decision freely(double support, Meaning meaning) {
    Hypothesis heard =
        new Hypothesis(0, 3, List.of(new Word(Hypothesis.FILLER, 0, 3, 1)))
            .freely(free(3 * support, 3, 0, 4, null).freely().orElseThrow());
    return UtteranceVerifier.standard()
        .decide(
            heard,
            words ->
                new Interpretation(
                    words.isEmpty() ? List.of() : List.of(meaning), List.of(), Dialogue.START),
            false);
  }

  /** A phrase beside other speech, and what the same sound says in any words; limits in use. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      nullValues = "-",
      value = {"hips, UNSURE, 1", "word, IGNORED, 1", "-, UNSURE, 1", "hips, ACCEPTED, 0"})
  void phrasesThatFitBadlyAreOfferedOnlyWhereFreeWordingsSayTheSame(
      String freely, Outcome outcome, double filler) {
    Hypothesis phrase = utterance(filler, 2, 5.0);
    Hypothesis heard =
        freely == null
            ? phrase
            : phrase.freely(
                new Hypothesis(0, 1, List.of(new Word(freely, 0, 1, 1))).weighed(-8, List.of()));
    assertEquals(
        outcome,
        UtteranceVerifier.standard()
            .decide(heard, UtteranceVerifierTest::murmurInHips, false)
            .outcome());
  }

  private static Interpretation murmurInHips(List<String> words) {
    Meaning states = new Meaning.States(Finding.of("murmur", null, "present"), false);
    return new Interpretation(
        words.contains("hips") ? List.of(states) : List.of(), List.of(), Dialogue.START);
  }

  @Test
  void wordsNearlyAsLikelyThatMeanSomethingElsePutAnUtteranceInDoubt() {
    Hypothesis heard = utterance(0, 1, 5.0);

    assertDecided(Outcome.ACCEPTED, "", decide(orElse(heard, "hip", 0.1)));
    assertDecided(Outcome.ACCEPTED, "", decide(orElse(heard, "lips", 1.6)));
    assertDecided(Outcome.UNSURE, "may also be: lips", decide(orElse(heard, "lips", 1.5)));
    assertDecided(Outcome.UNSURE, "may also be: other speech", decide(orElse(heard, "", 0)));
  }

  private static Hypothesis orElse(Hypothesis heard, String text, double margin) {
    return heard.weighed(5, List.of(new Rival(text, margin)));
  }

  private static void assertDecided(
      Outcome outcome, String reason, UtteranceVerifier.Decision decision) {
    assertEquals(outcome, decision.outcome());
    assertEquals(reason, decision.reason());
  }

  @Test
  void whatIsNotAcceptedIsOfferedInTheFreeWordingsThatFit() {
    UtteranceVerifier.Decision offered = decide(free(5, 3, 0, 4, -12.0));

    assertDecided(Outcome.UNSURE, "may also be: hips", offered);
    assertEquals("word word word word", offered.text());
    assertEquals(4, offered.words().size());
    assertEquals(Source.TAGGER, offered.interpretation().statements().get(0).source());
    assertDecided(Outcome.UNSURE, "heard in free wordings", decide(free(5, 3, 0, 4, -30.0)));
    assertEquals("hips", decide(free(5, 3, 0.8, 4, 0.0)).text());
  }

  @Test
  void wordsThatMeanNothingAreIgnoredAndThoseNotUnderstoodUnsure() {
    Interpretation nothing = new Interpretation(List.of(), List.of(), Dialogue.START);
    Interpretation half =
        new Interpretation(
            interpret(List.of("hips")).meanings(), List.of("very", "odd"), Dialogue.START);

    assertDecided(Outcome.IGNORED, "nothing that is recorded", VERIFIER.decide(nothing, false));
    assertDecided(Outcome.UNSURE, "not understood: very odd", VERIFIER.decide(half, false));
  }

  @Test
  void aBareYesCountsOnlyWhereItIsAwaited() {
    Interpretation yes =
        new Interpretation(
            List.of(new Meaning.Instruction(Command.YES)), List.of(), Dialogue.START);

    assertEquals(Outcome.COMMAND, VERIFIER.decide(yes, true).outcome());
    assertEquals(Outcome.IGNORED, VERIFIER.decide(yes, false).outcome());
  }

  @Test
  void refusesLimitsInTheWrongOrder() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new VerifierLimits(-15, -18, -12, 1, -5, 0.2, 3, 1, 5));

    assertEquals("expected unsure-from of at most -15.0, found -12.0", refused.getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () -> new VerifierLimits(-15, -14, -16, 1, -5, 0.2, 3, 1, 5));
  }

  private static Hypothesis utterance(double filler, double phrase, Double support) {
    List<Word> words = new ArrayList<>();
    if (filler > 0) {
      words.add(new Word(Hypothesis.FILLER, 1, 1 + filler, 1));
    }
    if (phrase > 0) {
      words.add(new Word("hips", 1 + filler, 1 + filler + phrase, 1));
    }
    Hypothesis once = new Hypothesis(1, 1 + filler + phrase, words);
    return support == null ? once : once.weighed(support, List.of());
  }
}
