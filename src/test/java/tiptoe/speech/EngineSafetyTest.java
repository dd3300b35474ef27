package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.FullOnly;
import tiptoe.TestExtent;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.graph.BuiltModel;

/** The native engine under sounds that are hard on it, and under careless use. */
@Tag("hearing")
class EngineSafetyTest {
  /** Utterances are cut at 15 s; the decoder looks at the length once for each piece. */
  private static final double LONGEST_SECONDS = 15.5;

  private static final double MOST_BEHIND_SECONDS = 2;

  /** What a minute of hard sound may leave behind in memory, once the engine is warm. */
  private static final long MOST_GROWTH_MEGABYTES = 96;

  private static SpeechModel model;

  @BeforeAll
  static void open() throws IOException {
    model = Clips.hearingTwice(Clips.network());
  }

  @AfterAll
  static void close() {
    model.close();
  }

  private static void endures(String name, Pcm sound) throws IOException {
    Strain.of(model, sound, 1);
    long before = Strain.residentMegabytes();
    Strain.Cost cost = Strain.of(model, sound, 1);
    long after = Strain.residentMegabytes();
    System.out.printf("%s: %s, resident %d MB, then %d MB%n", name, cost, before, after);
    assertTrue(cost.longest() <= LONGEST_SECONDS, cost.toString());
    assertTrue(cost.behind() <= MOST_BEHIND_SECONDS, cost.toString());
    assertTrue(after - before <= MOST_GROWTH_MEGABYTES, before + " MB, then " + after + " MB");
  }

  @Test
  @FullOnly("noise, cries and silence are endured")
  void enduresPeopleTalkingOverOneAnother() throws IOException {
    endures("babble", Strain.babble(TestExtent.of(4, 16), 4));
  }

  @Test
  void enduresWhiteNoise() throws IOException {
    endures("white noise", Strain.whiteNoise(TestExtent.of(8, 15), 2000));
  }

  @Test
  void enduresCrying() throws IOException {
    endures("cries", Strain.cry(TestExtent.of(7, 15)));
  }

  @Test
  void enduresSilence() throws IOException {
    endures("silence", Pcm.silence(30));
  }

  @Test
  void whatIsCutOffForItsLengthIsNeverTakenForComplete() throws IOException {
    short[] once = Strain.spoken(AudioFile.read(Clips.FOLDER.resolve("036.wav")));
    short[] sound = new short[20 * Pcm.RATE];
    for (int i = 0; i < sound.length; i++) {
      sound[i] = once[i % once.length];
    }
    try (Recogniser recogniser = model.recogniser()) {
      List<Hypothesis> cut = recogniser.accept(sound);
      assertFalse(cut.isEmpty());
      Hypothesis first = cut.get(0);
      assertTrue(first.end() - first.start() > 10, first.toString());
      assertTrue(first.words().get(first.words().size() - 1).isFiller(), first.toString());
    }
  }

  @Test
  void recognisersSideBySideHearWhatEachHearsAlone() throws Exception {
    List<Clips.Clip> clips = Clips.all().subList(0, TestExtent.of(3, 6));
    List<String> alone = new ArrayList<>();
    for (Clips.Clip clip : clips) {
      alone.add(Clips.text(Clips.hear(model, clip.file())));
    }
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try {
      List<Callable<String>> jobs =
          clips.stream()
              .map(clip -> (Callable<String>) () -> Clips.text(Clips.hear(model, clip.file())))
              .toList();
      List<String> together = new ArrayList<>();
      for (Future<String> job : threads.invokeAll(jobs)) {
        together.add(job.get());
      }
      assertEquals(alone, together);
    } finally {
      threads.shutdownNow();
    }
  }

  @Test
  void letsGoWhatItLoadedWhereAnotherFolderIsNone(@TempDir Path other) throws IOException {
    Path models = Files.createSymbolicLink(other.resolve("models"), Clips.models());
    BuiltModel phrases = Clips.built(Clips.network(), models);
    BuiltModel none = new BuiltModel(other.resolve("none"), 0, 0, false);
    assertThrows(IOException.class, () -> SpeechModel.open(phrases, none, phrases));
    assertTrue(SpeechModel.loaded().stream().noneMatch(folder -> folder.startsWith(other)));
  }

  @Test
  void isClosedAndOpenedAgainAndAgain(@TempDir Path other) throws IOException {
    // By another name, since what is open already is shared.
    Path models = Files.createSymbolicLink(other.resolve("models"), Clips.models());
    Pcm clip = AudioFile.read(Clips.FOLDER.resolve("036.wav"));
    String first = null;
    for (int i = 0; i < TestExtent.of(2, 3); i++) {
      SpeechModel again = Clips.hearingTwice(Clips.network(), models);
      Recogniser recogniser = again.recogniser();
      String heard = Clips.text(Clips.hear(recogniser, clip));
      // The model is let go first: a recogniser that is still open keeps what it needs.
      again.close();
      again.close();
      recogniser.accept(Pcm.silence(1).samples());
      recogniser.close();
      recogniser.close();
      first = first == null ? heard : first;
      assertEquals(first, heard);
      assertThrows(IllegalStateException.class, () -> recogniser.accept(clip.samples()));
      assertThrows(IllegalStateException.class, recogniser::partial);
      assertThrows(IllegalStateException.class, recogniser::finish);
      assertThrows(IllegalStateException.class, again::recogniser);
    }
  }

  @Test
  void isClosedWhileAnotherThreadListens() throws Exception {
    short[] clip = AudioFile.read(Clips.FOLDER.resolve("036.wav")).samples();
    for (int i = 0; i < 5; i++) {
      Recogniser recogniser = model.recogniser();
      Thread listener =
          new Thread(
              () ->
                  assertThrows(
                      IllegalStateException.class,
                      () -> {
                        while (true) {
                          recogniser.accept(Arrays.copyOf(clip, 1600));
                        }
                      }));
      listener.start();
      recogniser.partial();
      recogniser.close();
      listener.join();
    }
  }
}
