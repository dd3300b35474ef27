package tiptoe.graph;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/** The symbol table inside an OpenFst file: the words behind the labels. */
final class SymbolTable {
  private static final int MAGIC = 2125658996;

  private final Map<Integer, String> symbols = new HashMap<>();

  private SymbolTable() {}

  /** Reads the first symbol table of a machine that has one. */
  static SymbolTable read(Path file) throws IOException {
    BinaryReader in = new BinaryReader(file);
    FstHeader header = FstHeader.read(in);
    if (!header.hasSymbols()) {
      throw in.unusable("expected a symbol table", "none");
    }
    int magic = in.int32();
    if (magic != MAGIC) {
      throw in.unusable("expected a symbol table", "the number " + magic);
    }
    in.string(); // name of the table
    in.int64(); // next free label
    int size = in.length(in.int64(), 12);
    SymbolTable table = new SymbolTable();
    for (int i = 0; i < size; i++) {
      String symbol = in.string();
      table.symbols.put((int) in.int64(), symbol);
    }
    return table;
  }

  /** The symbol of a label, or null. */
  String symbol(int label) {
    return symbols.get(label);
  }

  /** Whether a label stands for a word rather than for empty or for an auxiliary like #0. */
  boolean isWord(int label) {
    String symbol = symbols.get(label);
    return symbol != null && !symbol.startsWith("#") && !symbol.startsWith("<");
  }
}
