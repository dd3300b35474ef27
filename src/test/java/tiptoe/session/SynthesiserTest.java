package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tiptoe.FullOnly;
import tiptoe.audio.Pcm;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

class SynthesiserTest {
  private static final Settings SPOKEN = Settings.DEFAULT.with(Setting.SPOKEN_ANSWERS, "all");

  @Test
  void aMissingProgramIsToldOnlyWhereAVoiceIsWanted() {
    Settings absent = SPOKEN.with(Setting.SYNTHESISER, "no-such-voice -x");
    assertEquals(
        Optional.of("answers are not spoken: expected the program no-such-voice, found none"),
        Synthesiser.missing(absent));
    assertEquals(Optional.empty(), Synthesiser.missing(absent.with(Setting.SPOKEN_ANSWERS, "off")));
  }

  @Test
  void aProgramThatPlaysItselfGivesNoSound() throws Exception {
    Settings own = SPOKEN.with(Setting.SYNTHESISER, "true {text}");
    assertEquals(Optional.empty(), new Synthesiser(own).speak("left Barlow, negative"));
  }

  /** Else the microphone would stay shut. */
  @Test
  @FullOnly("one that speaks and one that plays itself are run")
  void aProgramThatHangsIsEnded() {
    assumeTrue(Files.isExecutable(Path.of("/bin/sleep")), "no sleep here");
    Synthesiser hanging = new Synthesiser(SPOKEN.with(Setting.SYNTHESISER, "/bin/sleep 600"));
    assertTrue(
        assertThrows(IOException.class, () -> hanging.speak("")).getMessage().contains("end"));
    assertTrue(
        ProcessHandle.current()
            .children()
            .noneMatch(child -> child.info().command().orElse("").endsWith("sleep")));
  }

  @Test
  void theUsualProgramSpeaks() throws Exception {
    assumeTrue(Synthesiser.missing(SPOKEN).isEmpty(), "espeak-ng is not installed");
    Pcm sound = new Synthesiser(SPOKEN).speak("left Barlow, negative").orElseThrow();
    assertEquals(Pcm.RATE, sound.sampleRate());
    assertTrue(sound.seconds() > 0.8 && sound.seconds() < 4, sound.seconds() + " s");
  }
}
