package tiptoe.graph;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Whatever the files of a speech model hold, they are read or refused with a message. */
class ModelFilesFuzz {
  private static final Path FOLDER = folder();

  private static Path folder() {
    try {
      Path folder = Files.createTempDirectory("fuzz");
      for (String name : new String[] {"am", "conf", "graph/phones"}) {
        Files.createDirectories(folder.resolve(name));
      }
      TinyModel.write(folder);
      return folder;
    } catch (IOException e) {
      throw new ExceptionInInitializerError(e);
    }
  }

  @FuzzTest
  void anyTransitionModelIsReadOrRefused(byte[] bytes) throws IOException {
    readWith(ModelFolder.TRANSITIONS, bytes, folder -> transitions());
  }

  @FuzzTest
  void anyGraphIsReadOrRefused(byte[] bytes) throws IOException {
    readWith(
        ModelFolder.GRAPH,
        bytes,
        folder -> {
          ConstFst graph = ConstFst.read(folder.file(ModelFolder.GRAPH));
          lexicon(graph);
          PhoneContexts.recover(graph, transitions());
        });
  }

  @FuzzTest
  void anySymbolTableIsReadOrRefused(byte[] bytes) throws IOException {
    readWith(
        ModelFolder.WORDS, bytes, folder -> lexicon(ConstFst.read(folder.file(ModelFolder.GRAPH))));
  }

  @FuzzTest
  void anyWordBoundariesAreReadOrRefused(byte[] bytes) throws IOException {
    readWith(
        ModelFolder.WORD_BOUNDARY,
        bytes,
        folder -> AcousticModel.checkPhones(folder, transitions()));
  }

  private static TransitionModel transitions() throws IOException {
    return TransitionModel.read(FOLDER.resolve(ModelFolder.TRANSITIONS));
  }

  private static void lexicon(ConstFst graph) throws IOException {
    SymbolTable symbols = SymbolTable.read(FOLDER.resolve(ModelFolder.WORDS));
    Lexicon.recover(graph, symbols, transitions());
  }

  private interface Reading {
    void read(ModelFolder folder) throws IOException;
  }

  /** Reads a part of the small model with one of its files replaced, and puts the file back. */
  private static void readWith(String name, byte[] bytes, Reading reading) throws IOException {
    Path file = FOLDER.resolve(name);
    byte[] whole = Files.readAllBytes(file);
    try {
      Files.write(file, bytes);
      reading.read(ModelFolder.open(FOLDER));
    } catch (UnusableModelException e) {
      if (e.getMessage().isBlank() || e.getMessage().contains("\n")) {
        throw new AssertionError("expected a message of one line, found " + e.getMessage(), e);
      }
    } finally {
      Files.write(file, whole);
    }
  }
}
