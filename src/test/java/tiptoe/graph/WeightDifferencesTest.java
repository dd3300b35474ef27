package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WeightDifferencesTest {
  private static final Path FILE = Path.of("models/cry-adapted.differences");
  private static final Path MODEL = StockModel.PATH.resolve(ModelFolder.TRANSITIONS);

  @TempDir Path temp;

  @Test
  void shippedDifferencesMakeTheModelTheyPromise() throws IOException {
    WeightDifferences differences = WeightDifferences.read(FILE);
    Path made = temp.resolve("final.mdl");
    differences.write(MODEL, made);
    assertEquals(differences.adapted(), Manifest.sha256(made));
    assertEquals(Files.size(MODEL), Files.size(made));
    long weights =
        differences.blocks().stream().mapToLong(block -> block.rows() * block.columns()).sum();
    assertEquals(3_230_736, weights);
  }

  @Test
  void anotherModelIsRefused() throws IOException {
    Path other = temp.resolve("other.mdl");
    byte[] data = Files.readAllBytes(MODEL);
    data[data.length / 2] ^= 1;
    Files.write(other, data);
    Path made = temp.resolve("final.mdl");
    UnusableModelException refused =
        assertThrows(
            UnusableModelException.class, () -> WeightDifferences.read(FILE).write(other, made));
    assertTrue(refused.getMessage().startsWith("expected SHA-256"), refused.getMessage());
    assertFalse(Files.exists(made));
  }

  @Test
  void anythingElseIsNoFileOfDifferences() throws IOException {
    Path file = temp.resolve("text");
    Files.writeString(file, "stock\n\nbody", StandardCharsets.US_ASCII);
    assertThrows(UnusableModelException.class, () -> WeightDifferences.read(file));
  }
}
