package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ModelFolderTest {
  @TempDir Path temp;

  @Test
  void acceptsTheModelThatTheBuildFetched() throws IOException {
    ModelFolder model = ModelFolder.open(StockModel.PATH);

    assertEquals(StockModel.PATH, model.path());
    assertEquals(64, model.identity().length());
  }

  @Test
  void looksWhereTheUserSaysThenInTheEnvironmentThenInModels() {
    Map<String, String> environment = Map.of("TIPTOE_MODEL", "elsewhere");

    assertEquals(Path.of("given"), ModelFolder.locate(Path.of("given"), environment, temp));
    assertEquals(Path.of("elsewhere"), ModelFolder.locate(null, environment, temp));
    assertEquals(
        temp.resolve("models/vosk-model-en-0.3.45"), ModelFolder.locate(null, Map.of(), temp));
  }

  @Test
  void saysHowToFetchAMissingModel() {
    Path missing = temp.resolve("none");

    assertEquals(
        "expected a speech model folder at " + missing + ", found none; 'mvn compile' fetches it",
        messageOf(missing));
  }

  @Test
  void namesTheFileThatAHalfUnpackedStockModelLacks() throws IOException {
    Path model = temp.resolve(ModelFolder.STOCK);
    Files.createDirectories(model);

    assertEquals(
        "expected README in "
            + model
            + ", found none; delete the folder and run 'mvn compile' to fetch it again",
        messageOf(model));
  }

  @Test
  void namesTheFileOfAStockModelThatIsDamaged() throws IOException {
    Path model = temp.resolve(ModelFolder.STOCK);
    StockModel.copyTo(model);
    Files.writeString(model.resolve("conf/model.conf"), "");

    // SHA-256 of no bytes: FIPS 180-4 example value, e3b0c442…
    assertEquals(
        "expected SHA-256 8f14cb1eeb07… of conf/model.conf in "
            + model
            + ", found e3b0c44298fc…; delete the folder and run 'mvn compile' to fetch it again",
        messageOf(model));
  }

  @Test
  void checksTheStructureOfAnotherModel() throws IOException {
    Path model = temp.resolve("mine");
    StockModel.copyTo(model);
    assertEquals(model, ModelFolder.open(model).path());

    Files.write(model.resolve("graph/Gr.fst"), new byte[0]);
    assertEquals(
        "expected graph/Gr.fst in the speech model " + model + ", found an empty file",
        messageOf(model));
  }

  @Test
  void refusesAModelWithAFixedGraph() throws IOException {
    Path model = temp.resolve("large");
    Files.createDirectories(model.resolve("graph"));
    Files.writeString(model.resolve("graph/HCLG.fst"), "fixed");

    assertEquals(
        "expected a Vosk model with a run-time graph (graph/HCLr.fst) in "
            + model
            + ", found one with a fixed graph",
        messageOf(model));
  }

  @Test
  void announcesAFetchOnlyWhenTheModelIsNotIntact() throws IOException {
    Path mark = temp.resolve("target/intact");
    assertEquals("", notice(StockModel.PATH, mark));
    assertTrue(Files.exists(mark));

    String fetching = notice(temp.resolve("none"), mark);
    assertEquals("fetching the speech model (41 MB, once)", fetching.strip());
    assertFalse(Files.exists(mark));
  }

  @Test
  void anotherModelIsNotAdapted() throws IOException {
    ModelFolder stock = ModelFolder.open(StockModel.PATH);
    ModelFolder other = new ModelFolder(Path.of("other"), stock.identity(), Optional.empty());
    String message =
        assertThrows(
                UnusableModelException.class,
                () -> other.adaptedBy(Path.of("models", ModelFolder.ADAPTED)))
            .getMessage();
    assertEquals(
        "expected vosk-model-en-0.3.45 for adapted weights, found other; set weights: stock to use"
            + " another model",
        message);
  }

  private static String notice(Path model, Path mark) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ModelFetchNotice.mark(model, mark, new PrintStream(out, true, StandardCharsets.UTF_8));
    return out.toString(StandardCharsets.UTF_8);
  }

  private static String messageOf(Path folder) {
    return assertThrows(UnusableModelException.class, () -> ModelFolder.open(folder)).getMessage();
  }
}
