package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PronunciationsTest {
  private static Lexicon lexicon;

  @BeforeAll
  static void readModel() throws IOException {
    lexicon = StockModel.read().lexicon();
  }

  @Test
  void readsPhonesWithAndWithoutStress() {
    Pronunciations read =
        parse("ortolani  AO R T AH L AA N IY  # as said here", "meconium m ih k OW1 N IY0 AH0 M");

    assertEquals("[AO R T AH L AA N IY]", read.of("ortolani").toString());
    assertEquals("[M IH K OW N IY AH M]", read.of("meconium").toString());
    assertEquals(List.of(), read.problems());
  }

  @Test
  void severalLinesForAWordAreVariants() {
    Pronunciations read = parse("pectus P EH K T AH S", "", "pectus P EH K T UH S");

    assertEquals("[P EH K T AH S, P EH K T UH S]", read.of("pectus").toString());
  }

  @Test
  void joinsTheWordsThatAWordSoundsLike() {
    Pronunciations read = parse("fontanelle ~ font ah nell");

    assertEquals("[F AA N T AA N EH L]", read.of("fontanelle").toString());
  }

  @Test
  void soundsLikeWordsOfTheFileTooWithAllTheirVariants() {
    Pronunciations read =
        parse(
            "hepato HH EH P AH T OW",
            "hepato HH IH P AE T OW",
            "hepatosplenic ~ hepato splenic",
            "splenic S P L EH N IH K");

    assertEquals(
        "[HH EH P AH T OW S P L EH N IH K, HH IH P AE T OW S P L EH N IH K]",
        read.of("hepatosplenic").toString());
  }

  @Test
  void whatTheFileHasWinsOverTheModel() {
    assertEquals("[B AA R L OW]", parse("barlow B AA R L OW").of("barlow").toString());
  }

  @Test
  void aWordInItsOwnLineKeepsWhatTheModelHas() {
    Pronunciations read = parse("barlow ~ barlow", "barlow B AA R L UW");

    assertEquals(1 + lexicon.of("barlow").size(), read.of("barlow").size());
    assertEquals(lexicon.of("barlow").get(0), read.of("barlow").get(0));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          caput             | p.txt:1:1: expected phones or ~, found only caput
          caput ~           | p.txt:1:1: expected words it sounds like, found only caput ~
          caput K AE PP     | p.txt:1:12: expected an ARPABET phone, found PP
          caput ~ kap zzyzy | p.txt:1:13: expected a word that the model or this file knows, found zzyzy
          zzyzy ~ zzyzy     | p.txt:1:9: expected a word that the model knows, found zzyzy
          Caput K AE P      | p.txt:1:1: expected a word in lower case, found Caput
          """)
  void saysWhatIsWrongAndWhere(String line, String problem) {
    assertEquals("[" + problem + "]", parse(line).problems().toString());
  }

  @Test
  void refusesWordsThatSoundLikeEachOther() {
    Pronunciations read = parse("zzaa ~ zzbb", "zzbb ~ zzaa");

    assertEquals(
        "[p.txt:2:8: expected words that do not refer back, found zzaa]",
        read.problems().toString());
  }

  @Test
  void theProjectsOwnFileIsInOrder() throws IOException {
    Pronunciations own = Pronunciations.read(Path.of("grammars/pronunciations.txt"), lexicon);

    assertEquals(List.of(), own.problems());
  }

  private static Pronunciations parse(String... lines) {
    return Pronunciations.parse("p.txt", List.of(lines), lexicon);
  }
}
