package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class AcousticModelTest {
  private static final String CMUDICT = "/edu/cmu/sphinx/models/en-us/cmudict-en-us.dict";

  private static AcousticModel model;

  @BeforeAll
  static void readModel() throws IOException {
    model = StockModel.read();
  }

  // the counts of this model were found by another reader, in another language; no published source
  @Test
  void readsEveryTransitionOfTheStockModel() {
    assertEquals(166, model.transitions().phones());
    assertEquals(10_014, model.transitions().transitionIds());
  }

  @Test
  void recoversOneTransitionForEachPairOfPhones() {
    assertEquals(9_951, model.contexts().pairs());
  }

  @Test
  void everyPhoneCanFollowEveryOther() {
    for (Phone left : Phone.values()) {
      for (Phone phone : Phone.values()) {
        int inside = phone.at(Phone.Place.INSIDE);
        int id = model.contexts().forward(left.at(Phone.Place.BEGIN), inside);
        assertEquals(inside, model.transitions().phoneOf(id), left + " " + phone);
      }
    }
  }

  @Test
  void recoversTheLexiconOfTheStockModel() {
    Lexicon lexicon = model.lexicon();

    assertEquals(152_212, lexicon.words().size() + lexicon.sounds().size());
    assertEquals(159_848, lexicon.pronunciations() + lexicon.sounds().size());
    assertEquals(Set.of("!SIL", "[unk]"), lexicon.sounds().keySet());
    assertEquals("[L EH F T]", lexicon.of("left").toString());
    assertEquals(List.of(), lexicon.of("fontanelle"));
  }

  /** The CMU Pronouncing Dictionary as CMU Sphinx ships it, by way of Maven Central. */
  @Test
  void agreesWithTheCmuPronouncingDictionary() throws IOException {
    Map<String, Set<String>> dictionary = cmuDictionary();
    int shared = 0;
    int identical = 0;
    for (String word : model.lexicon().words()) {
      Set<String> expected = dictionary.get(word);
      if (expected != null) {
        shared++;
        boolean same =
            model.lexicon().of(word).stream().anyMatch(p -> expected.contains(p.toString()));
        identical += same ? 1 : 0;
      }
    }

    assertTrue(shared > 80_000, "expected most of the dictionary, found " + shared);
    double share = (double) identical / shared;
    assertTrue(share >= 0.97, "expected 97 % identical, found " + share);
  }

  private static Map<String, Set<String>> cmuDictionary() throws IOException {
    Map<String, Set<String>> dictionary = new HashMap<>();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                AcousticModelTest.class.getResourceAsStream(CMUDICT), StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        String[] halves = line.split("\\s+", 2);
        String word = halves[0].replaceFirst("\\(\\d+\\)$", "");
        dictionary.computeIfAbsent(word, w -> new TreeSet<>()).add(halves[1].strip());
      }
    }
    return dictionary;
  }
}
