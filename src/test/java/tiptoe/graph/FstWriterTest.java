package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.graph.DecodingGraph.State;

class FstWriterTest {
  private static final DecodingGraph SMALL =
      new DecodingGraph(
          1,
          List.of(
              State.of(List.of(new Arc(7, 0, 0.5f, DecodingGraph.SELF), Arc.empty(0.25f, 2))),
              State.of(List.of(new Arc(8, 1, 1.5f, 0))),
              new State(2, List.of())),
          List.of("<eps>", "[unk]"));

  private static DecodingGraph graph;

  @TempDir Path temp;

  @BeforeAll
  static void build() throws IOException {
    AcousticModel model = StockModel.read();
    Pronunciations lexiconOnly = Pronunciations.parse("none", List.of(), model.lexicon());
    graph =
        DecodingGraphBuilder.build(
            Words.of("left clavicle intact", "skin pink"),
            lexiconOnly,
            model,
            GraphSettings.DEFAULT);
  }

  @Test
  void writesWhatItsOwnReaderReads() throws IOException {
    ConstFst read = ConstFst.read(written(graph));

    assertEquals(graph.start(), read.start());
    assertEquals(graph.stateCount(), read.states());
    assertEquals(graph.arcCount(), read.arcs());
    for (int number = 0; number < graph.stateCount(); number++) {
      State state = graph.states().get(number);
      assertEquals(state.finalCost(), read.finalCost(number));
      assertEquals(state.arcs().size(), read.endArc(number) - read.firstArc(number));
      for (int i = 0; i < state.arcs().size(); i++) {
        int arc = read.firstArc(number) + i;
        Arc expected = state.arcs().get(i);
        int target = expected.target() == DecodingGraph.SELF ? number : expected.target();
        assertEquals(
            new Arc(expected.in(), expected.out(), expected.cost(), target),
            new Arc(read.inLabel(arc), read.outLabel(arc), read.cost(arc), read.target(arc)));
      }
    }
  }

  /** OpenFst's own tools, Debian package libfst-tools. */
  @Test
  void openFstCountsTheSameStatesAndArcs() throws Exception {
    List<String> info = run("fstinfo", written(graph).toString());

    assertTrue(info.contains(row("fst type", "const")), () -> String.join("\n", info));
    assertTrue(info.contains(row("# of states", graph.stateCount())));
    assertTrue(info.contains(row("# of arcs", graph.arcCount())));
    assertTrue(info.contains(row("initial state", graph.start())));
    assertTrue(info.contains(row("# of accessible states", graph.stateCount())), "no dead states");
    assertTrue(info.contains(row("# of coaccessible states", graph.stateCount())), "no dead ends");
  }

  /** The text form of OpenFst: source, target, in-label, out-label, weight; then final states. */
  @Test
  void openFstPrintsTheSameArcs() throws Exception {
    List<String> printed = run("fstprint", written(SMALL).toString());

    assertEquals(
        List.of("1\t0\t8\t1\t1.5", "0\t0\t7\t0\t0.5", "0\t2\t0\t0\t0.25", "2\t2"), printed);
  }

  private Path written(DecodingGraph of) throws IOException {
    Path file = temp.resolve("HCLG.fst");
    FstWriter.write(of, file);
    return file;
  }

  private static String row(String name, Object value) {
    return String.format(Locale.ROOT, "%-50s%s", name, value);
  }

  private static List<String> run(String... command) throws Exception {
    assumeTrue(installed(command[0]), command[0] + " is not installed (Debian: libfst-tools)");
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), out);
    return new ArrayList<>(out.lines().toList());
  }

  private static boolean installed(String name) {
    String path = System.getenv().getOrDefault("PATH", "");
    return List.of(path.split(java.io.File.pathSeparator)).stream()
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, name)));
  }
}
