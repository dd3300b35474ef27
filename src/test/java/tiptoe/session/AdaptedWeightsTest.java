package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tiptoe.audio.AudioFile;
import tiptoe.files.Sha256;
import tiptoe.graph.ModelFolder;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.speech.Clips;

/** Hearing by the adapted weights, which the settings choose. */
@Tag("hearing")
class AdaptedWeightsTest {
  @Test
  void theAdaptedModelIsLoadedAndHears() throws IOException {
    Hearing hearing = new Hearing(Settings.DEFAULT.with(Setting.WEIGHTS, "adapted"));
    try (Engine engine = hearing.engine()) {
      assertEquals(promised(), acoustic(engine));

      Clips.Clip clip = Clips.all().get(0);
      var meant = hearing.means(clip.text());
      assertFalse(meant.isEmpty(), clip.text());
      assertEquals(meant, hearing.accepted(AudioFile.read(clip.file())), clip.text());
    }
  }

  private static String acoustic(Engine engine) throws IOException {
    return Sha256.hex(Sha256.of(engine.built().folder().resolve("am/final.mdl")));
  }

  /** What the head of the file says comes of it. */
  private static String promised() throws IOException {
    byte[] file = Files.readAllBytes(Path.of("models", ModelFolder.ADAPTED));
    String head = new String(file, 0, 400, StandardCharsets.US_ASCII);
    return head.lines()
        .filter(line -> line.startsWith("adapted "))
        .map(line -> line.substring("adapted ".length()))
        .findFirst()
        .orElseThrow();
  }
}
