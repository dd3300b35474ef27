package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.files.ContentCache;
import tiptoe.grammar.WordAutomaton;

class GraphCacheTest {
  private final AtomicInteger builds = new AtomicInteger();

  @TempDir Path temp;
  private ModelFolder model;
  private Path pronunciations;
  private GraphCache cache;

  @BeforeEach
  void openModel() throws IOException {
    model = ModelFolder.open(StockModel.PATH);
    pronunciations = temp.resolve("pronunciations.txt");
    Files.writeString(pronunciations, "ortolani AO R T AH L AA N IY\n");
    cache = new GraphCache(new ContentCache(List.of(temp.resolve("models"))));
  }

  @Test
  void buildsOnceForTheSameInputs() throws IOException {
    BuiltModel first = get(Words.of("ortolani negative"));
    BuiltModel second = get(Words.of("ortolani negative"));

    assertTrue(first.fresh());
    assertFalse(second.fresh());
    assertEquals(first.folder(), second.folder());
    assertEquals(first.states(), second.states());
    assertEquals(1, builds.get());
    assertTrue(Files.exists(first.folder().resolve("graph/HCLG.fst")));
    assertEquals("[unk] 1", Files.readAllLines(first.folder().resolve("graph/words.txt")).get(1));
  }

  /** Where links are not to be had, as for some users of Windows, files are copied. */
  @Test
  void holdsNoCopyOfTheModel() throws IOException {
    Path acoustic = get(Words.of("ortolani negative")).folder().resolve("am/final.mdl");
    assumeTrue(Files.getFileStore(temp).supportsFileAttributeView("posix"));
    assertTrue(Files.isSymbolicLink(acoustic));
    assertTrue(Files.isSameFile(model.file("am/final.mdl"), acoustic));
  }

  /** The graph is heard again by other settings, and lies on the disk once. */
  @Test
  void hearsAgainOverTheSameFilesByOtherSettings() throws IOException {
    BuiltModel first = get(Words.of("ortolani negative"));

    BuiltModel again = cache.again(first);

    assertTrue(again.fresh());
    assertEquals(first.arcs(), again.arcs());
    for (String same : List.of("graph/HCLG.fst", "am/final.mdl", "conf/mfcc.conf")) {
      assertTrue(
          Files.isSameFile(first.folder().resolve(same), again.folder().resolve(same)), same);
    }
    assertNotEquals(
        Files.readString(first.folder().resolve("conf/model.conf")),
        Files.readString(again.folder().resolve("conf/model.conf")));
    assertFalse(cache.again(first).fresh());
    assertNotEquals(again.folder(), cache.again(get(Words.of("ortolani positive"))).folder());
  }

  /** A file that is there is not written again: another process may be reading it. */
  @Test
  void processesThatBuildTheSameAtOnceShareOne() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(2);
    try {
      Callable<BuiltModel> job = () -> get(Words.of("ortolani negative"));
      Set<Path> folders = new HashSet<>();
      for (Future<BuiltModel> built : threads.invokeAll(List.of(job, job))) {
        folders.add(built.get().folder());
      }
      assertEquals(1, folders.size());
      assertFalse(get(Words.of("ortolani negative")).fresh());
    } finally {
      threads.shutdownNow();
    }
    try (Stream<Path> left = Files.list(temp.resolve("models"))) {
      assertEquals(1, left.count());
    }
  }

  @Test
  void anAdaptedModelHasFoldersOfItsOwnAndLeavesTheStockOneAlone() throws IOException {
    BuiltModel stock = get(Words.of("ortolani negative"));
    Path network = StockModel.PATH.resolve(ModelFolder.TRANSITIONS);
    String before = Manifest.sha256(network);
    Path differences = Path.of("models/cry-adapted.differences");

    model = model.adaptedBy(differences);
    BuiltModel adapted = get(Words.of("ortolani negative"));

    assertNotEquals(stock.folder(), adapted.folder());
    assertEquals(
        WeightDifferences.read(differences).adapted(),
        Manifest.sha256(adapted.folder().resolve(ModelFolder.TRANSITIONS)));
    assertEquals(before, Manifest.sha256(stock.folder().resolve(ModelFolder.TRANSITIONS)));
    assertEquals(before, Manifest.sha256(network));
    assertEquals(stock.arcs(), adapted.arcs());
    BuiltModel other = get(Words.of("ortolani positive"));
    assertTrue(
        Files.isSameFile(
            adapted.folder().resolve(ModelFolder.TRANSITIONS),
            other.folder().resolve(ModelFolder.TRANSITIONS)));
  }

  @Test
  void buildsAgainWhenAnythingItIsMadeFromChanges() throws IOException {
    BuiltModel first = get(Words.of("ortolani negative"));

    BuiltModel otherWords = get(Words.of("ortolani positive"));
    Files.writeString(pronunciations, "ortolani AO R T OW L AA N IY\n");
    BuiltModel otherSounds = get(Words.of("ortolani negative"));

    assertEquals(3, builds.get());
    assertNotEquals(first.folder(), otherWords.folder());
    assertNotEquals(first.folder(), otherSounds.folder());
  }

  @Test
  void buildsAgainWhenAFileOfItIsDamaged() throws IOException {
    BuiltModel first = get(Words.of("ortolani negative"));
    Files.write(first.folder().resolve("graph/HCLG.fst"), new byte[1000]);

    BuiltModel second = get(Words.of("ortolani negative"));

    assertTrue(second.fresh());
    assertEquals(first.states(), second.states());
  }

  @Test
  void doesNotEvenMakeTheInputsOfFilesSeenBefore() throws IOException {
    Path grammars = Files.createDirectory(temp.resolve("grammars"));
    Files.writeString(grammars.resolve("a.gram"), "first");
    AtomicInteger made = new AtomicInteger();
    BuiltModel first = get(grammars, made);
    BuiltModel second = get(grammars, made);
    assertEquals(first.folder(), second.folder());
    assertEquals(1, made.get());

    Files.writeString(grammars.resolve("a.gram"), "second");
    get(grammars, made);
    assertEquals(2, made.get());
    assertEquals(1, builds.get());
  }

  @Test
  void makesTheInputsAgainWhenTheGraphThatWasNotedIsDamaged() throws IOException {
    Path grammars = Files.createDirectory(temp.resolve("grammars"));
    AtomicInteger made = new AtomicInteger();
    BuiltModel first = get(grammars, made);
    Files.write(first.folder().resolve("graph/HCLG.fst"), new byte[1000]);
    assertTrue(get(grammars, made).fresh());
    assertEquals(2, made.get());
  }

  private BuiltModel get(Path grammars, AtomicInteger made) throws IOException {
    GraphSources sources =
        new GraphSources(model, grammars, List.of(pronunciations), GraphSettings.DEFAULT);
    return cache.get(
        sources.hash(),
        () -> {
          made.incrementAndGet();
          return new GraphInputs(
              model, Words.of("ortolani negative"), pronunciations, GraphSettings.DEFAULT);
        },
        builds::incrementAndGet);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\u0000\u00ff", "..", "/", ""})
  void aDamagedNoteIsWrittenAgain(String damaged) throws IOException {
    Path grammars = Files.createDirectory(temp.resolve("grammars"));
    AtomicInteger made = new AtomicInteger();
    BuiltModel first = get(grammars, made);
    Path note;
    try (Stream<Path> files = Files.list(temp.resolve("models"))) {
      note =
          files.filter(file -> file.getFileName().toString().startsWith("from-")).findAny().get();
    }
    Files.writeString(note, damaged, StandardCharsets.ISO_8859_1);

    assertEquals(first.folder(), get(grammars, made).folder());
    assertEquals(2, made.get());
    assertEquals(1, builds.get());
    assertEquals(first.folder().getFileName().toString(), Files.readString(note));
  }

  @Test
  void leavesNothingHalfDoneBehind() throws IOException {
    get(Words.of("ortolani negative"));
    assertThrows(UnsayableWordsException.class, () -> get(Words.of("zzyzy")));

    try (Stream<Path> left = Files.list(temp.resolve("models"))) {
      assertEquals(1, left.count());
    }
  }

  @Test
  void namesTheWordThatCannotBeSaidAndItsPhrase() {
    UnsayableWordsException e =
        assertThrows(UnsayableWordsException.class, () -> get(Words.of("no zzyzy", "skin pink")));

    assertEquals(List.of(new MissingWord("zzyzy", "no zzyzy")), e.missing());
    assertEquals(
        "expected a pronunciation of \"zzyzy\" in pronunciations.txt or the model"
            + " (phrase: no zzyzy), found none",
        e.getMessage());
  }

  @Test
  void saysWhichLineOfThePronunciationsIsWrong() throws IOException {
    Files.writeString(pronunciations, "caput K AE PP\n");

    UnsayableWordsException e =
        assertThrows(UnsayableWordsException.class, () -> get(Words.of("skin pink")));
    assertEquals("pronunciations.txt:1:12: expected an ARPABET phone, found PP", e.getMessage());
  }

  private BuiltModel get(WordAutomaton words) throws IOException {
    GraphInputs inputs = new GraphInputs(model, words, pronunciations, GraphSettings.DEFAULT);
    return cache.get(inputs, builds::incrementAndGet);
  }
}
