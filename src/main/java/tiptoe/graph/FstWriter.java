package tiptoe.graph;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.graph.DecodingGraph.State;

/**
 * Writes a graph as an OpenFst file of type {@code const}, version 2 (not aligned), with standard
 * arcs: the layout of OpenFst 1.8, {@code fst/const-fst.h}.
 */
final class FstWriter {
  private static final int VERSION = 2;
  private static final long EXPANDED = 1;

  private final OutputStream out;
  private final ByteBuffer entry = ByteBuffer.allocate(64).order(ByteOrder.LITTLE_ENDIAN);

  private FstWriter(OutputStream out) {
    this.out = out;
  }

  static void write(DecodingGraph graph, Path file) throws IOException {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      FstWriter writer = new FstWriter(out);
      writer.header(graph);
      writer.states(graph.states());
      writer.arcs(graph.states());
    }
  }

  private void header(DecodingGraph graph) throws IOException {
    entry.putInt(FstHeader.MAGIC);
    string("const");
    string("standard");
    entry.putInt(VERSION).putInt(0);
    entry.putLong(EXPANDED).putLong(graph.start());
    flush();
    entry.putLong(graph.stateCount()).putLong(graph.arcCount());
    flush();
  }

  private void string(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
    entry.putInt(bytes.length).put(bytes);
  }

  private void states(List<State> states) throws IOException {
    int first = 0;
    for (State state : states) {
      int count = state.arcs().size();
      entry.putFloat(state.finalCost()).putInt(first).putInt(count);
      entry.putInt((int) state.arcs().stream().filter(arc -> arc.in() == 0).count());
      entry.putInt((int) state.arcs().stream().filter(arc -> arc.out() == 0).count());
      flush();
      first += count;
    }
  }

  private void arcs(List<State> states) throws IOException {
    for (int number = 0; number < states.size(); number++) {
      for (Arc arc : states.get(number).arcs()) {
        int target = arc.target() == DecodingGraph.SELF ? number : arc.target();
        entry.putInt(arc.in()).putInt(arc.out()).putFloat(arc.cost()).putInt(target);
        flush();
      }
    }
  }

  private void flush() throws IOException {
    out.write(entry.array(), 0, entry.position());
    entry.clear();
  }
}
