package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.grammar.Parse;
import tiptoe.session.Hearing;
import tiptoe.session.SentenceCheck;

/** The sound check on recordings; the clip says the sentence it asks for. */
class SoundcheckCommandTest {
  private static final Path CLIP = Path.of("src/test/resources/tiptoe/speech/clips/029.wav");

  @TempDir private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Tiptoe.run(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            args);
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private Ran check(Pcm sound) throws IOException {
    Path file = folder.resolve("sound.wav");
    AudioFile.write(file, sound);
    return run("soundcheck", "--from", file.toString());
  }

  private static Pcm louder(Pcm sound, double factor) {
    short[] samples = sound.samples().clone();
    for (int i = 0; i < samples.length; i++) {
      double sample = Math.rint(samples[i] * factor);
      samples[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, sample));
    }
    return Pcm.of(samples);
  }

  @Test
  void asksForASentenceOfTheGrammars() throws IOException {
    Parse parse = Hearing.understood().network().parse(SentenceCheck.SENTENCE);
    assertEquals(1, parse.phrases().size());
    assertTrue(parse.uncovered().isEmpty(), parse::toString);
  }

  @Test
  void saysThatTheSentenceWasHeard() {
    Ran ran = run("soundcheck", "--from", CLIP.toString());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("words: 6 of 6 right"), ran.out());
    assertTrue(ran.out().contains("taken as: accepted"), ran.out());
    assertTrue(ran.out().contains("heard well"), ran.out());
  }

  @Test
  void advisesWhereItIsTooLoudOrTooQuiet() throws IOException {
    Pcm clip = AudioFile.read(CLIP);
    assertTrue(check(louder(clip, 40)).out().contains("advice: too loud"));
    assertTrue(check(louder(clip, 0.01)).out().contains("advice: too quiet"));
  }

  @Test
  void saysThatTheMicrophoneIsMute() throws IOException {
    Ran ran = check(Pcm.silence(2));
    assertEquals(1, ran.code());
    assertEquals("expected sound, found that the microphone is mute\n", ran.err());
  }

  @Test
  void saysThatNothingWasSaid() throws IOException {
    short[] noise = new short[2 * Pcm.RATE];
    java.util.Random random = new java.util.Random(1);
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (short) Math.round(20 * random.nextGaussian());
    }
    Ran ran = check(Pcm.of(noise));
    assertEquals(1, ran.code());
    assertTrue(
        ran.err().contains("expected the sentence, heard nothing of the examination"), ran.err());
  }

  @Test
  void namesAMissingRecording() {
    Ran ran = run("soundcheck", "--from", folder.resolve("none.wav").toString());
    assertEquals(1, ran.code());
    assertTrue(ran.err().contains("none.wav"), ran.err());
  }
}
