package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the fuzz tests start from is a model that can be read. */
class TinyModelTest {
  @Test
  void theSmallModelSpellsItsWord(@TempDir Path folder) throws IOException {
    for (String name : new String[] {"am", "conf", "graph/phones"}) {
      Files.createDirectories(folder.resolve(name));
    }
    TinyModel.write(folder);
    AcousticModel model = AcousticModel.read(ModelFolder.open(folder));
    assertEquals(1, model.lexicon().words().size());
    assertEquals(1, model.lexicon().of("no").size());
    assertEquals(3, model.contexts().pairs());
  }
}
