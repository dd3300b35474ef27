package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tiptoe.FullOnly;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpreter;
import tiptoe.language.Shipped;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * Natural sentences, read by grammars and tagger together. The sentences were written by hand from
 * how the examination is dictated: common practice, no published source. The floors lie just below
 * what was measured.
 */
class NaturalSpeechTest {
  private static PhraseNetwork network;
  private static TypedText typed;
  private static LayLexicon lay;
  private static Tagger tagger;

  @BeforeAll
  static void train() throws IOException {
    network = Shipped.network();
    typed = Shipped.typed();
    lay = LayLexiconReader.shipped(Protocol.standard(), typed::words);
    tagger = Shipped.tagger();
  }

  private static NaturalSentences.Score score(String... authors) throws IOException {
    List<NaturalSentences.Row> rows = new ArrayList<>();
    for (String author : authors) {
      rows.addAll(NaturalSentences.read(author));
    }
    return NaturalSentences.score(
        rows, new Interpreter(network, Protocol.standard(), tagger), typed);
  }

  private static final String[] AUTHORS = {"registrar", "practitioner", "newcomers"};

  @Test
  void hasEnoughSentencesByMoreThanOneAuthor() throws IOException {
    int all = 0;
    for (String author : AUTHORS) {
      int sentences = NaturalSentences.read(author).size();
      assertTrue(sentences > 100, author);
      all += sentences;
    }
    assertTrue(all >= 250);
  }

  @Test
  void readsTheSentencesOfAllAuthorsAsMeant() throws IOException {
    NaturalSentences.Score score = score(AUTHORS);
    assertTrue(score.precision() >= 0.97, score::toString);
    assertTrue(score.recall() >= 0.96, score::toString);
  }

  @Test
  void readsTheSentencesOfTheLastAuthorAsMeant() throws IOException {
    NaturalSentences.Score score = score("newcomers");
    assertTrue(score.precision() >= 0.955, score::toString);
    assertTrue(score.recall() >= 0.94, score::toString);
  }

  @Test
  void hardlyEverTurnsADenialRoundOrTakesTheOtherSide() throws IOException {
    NaturalSentences.Score score = score(AUTHORS);
    double all = score.right + score.wrong;
    assertTrue(score.negationErrors.size() / all < 0.005, score.negationErrors::toString);
    assertTrue(score.sideErrors.size() / all < 0.005, score.sideErrors::toString);
  }

  @Test
  void aPlaceOfAStructureTellsItsSide() {
    // The side once went to the next structure, and the finding to both sides.
    assertEquals(
        "[toes LEFT fused-digits]", claims("there is webbing between two toes on the left foot"));
  }

  @Test
  void aWordThatDescribesAnAbnormalFindingIsNoNormalOne() {
    assertEquals("[skin null vesicles]", claims("vesicles on the scalp little clear blisters"));
  }

  private static String claims(String text) {
    return tagger.read(typed.words(text)).claims().stream()
        .map(claim -> claim.step() + " " + claim.side() + " " + claim.value())
        .toList()
        .toString();
  }

  @Test
  void labelsSentencesOfTemplatesItHasNotSeen() throws IOException {
    SpanScore score = SpanScore.onHeldOutTemplates(lay, network);
    assertTrue(score.f1() >= 0.85, score::toString);
  }

  @Test
  @FullOnly("what is trained is read by every test that understands words")
  void learnsTheSameFromTheSameSentences() throws IOException {
    List<Tagged> sentences =
        new TrainingSentences(lay, Protocol.standard(), 3).all(network).subList(0, 500);
    assertEquals(
        sentences, new TrainingSentences(lay, Protocol.standard(), 3).all(network).subList(0, 500));
    SpanModel one = SpanModel.train(sentences, lay);
    SpanModel other = SpanModel.train(sentences, lay);
    Random random = new Random(1);
    for (int i = 0; i < 50; i++) {
      List<String> words = network.samplePath(random).words();
      assertEquals(one.labels(words), other.labels(words));
    }
  }
}
