package tiptoe.graph;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.InflaterInputStream;
import tiptoe.files.Sha256;

/**
 * Differences between the weights of an adapted acoustic model and those of the stock one, as
 * {@code models/adapt/difference.py} writes them: one byte a weight and a scale for each row of a
 * matrix. {@code models/adapt/README.md} is the model card.
 *
 * @param stock SHA-256 of the {@code final.mdl} that they belong to, lower-case hexadecimal
 * @param adapted SHA-256 of the {@code final.mdl} that comes of it
 * @param blocks where the differences go
 * @param deflated scales and differences of all blocks
 */
record WeightDifferences(String stock, String adapted, List<Block> blocks, byte[] deflated) {
  private static final String MAGIC = "tiptoe-differences 1";
  private static final int FLOAT = Float.BYTES;

  /**
   * A matrix of float32 numbers in {@code final.mdl}.
   *
   * @param begin the byte at which it begins
   */
  record Block(int begin, int rows, int columns) {}

  /** Reads a file of differences. */
  static WeightDifferences read(Path file) throws IOException {
    byte[] data = Files.readAllBytes(file);
    int end = 0;
    while (end + 1 < data.length && !(data[end] == '\n' && data[end + 1] == '\n')) {
      end++;
    }
    List<String> head = new String(data, 0, end, StandardCharsets.US_ASCII).lines().toList();
    if (head.size() < 4
        || !head.get(0).equals(MAGIC)
        || !head.get(1).matches("stock [0-9a-f]{64}")
        || !head.get(2).matches("adapted [0-9a-f]{64}")) {
      throw new UnusableModelException("expected differences of weights in %s".formatted(file));
    }
    List<Block> blocks = new ArrayList<>();
    for (String line : head.subList(3, head.size())) {
      if (!line.matches("block( \\d{1,9}){3} \\S+ \\S+")) {
        throw new UnusableModelException(
            "expected a block of weights in %s, found %s".formatted(file, line));
      }
      String[] part = line.split(" ");
      blocks.add(
          new Block(
              Integer.parseInt(part[1]), Integer.parseInt(part[2]), Integer.parseInt(part[3])));
    }
    byte[] deflated = new byte[data.length - end - 2];
    System.arraycopy(data, end + 2, deflated, 0, deflated.length);
    return new WeightDifferences(
        head.get(1).substring("stock ".length()),
        head.get(2).substring("adapted ".length()),
        blocks,
        deflated);
  }

  /**
   * Writes the adapted model.
   *
   * @param model the stock {@code final.mdl}
   * @throws UnusableModelException if it is another, or what comes of it is not as promised
   */
  void write(Path model, Path to) throws IOException {
    byte[] data = Files.readAllBytes(model);
    expect(stock, data, model);
    ByteBuffer weights = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    try (DataInputStream in =
        new DataInputStream(new InflaterInputStream(new ByteArrayInputStream(deflated)))) {
      for (Block block : blocks) {
        add(in, block, weights);
      }
    }
    expect(adapted, data, to);
    Files.write(to, data);
  }

  private static void add(DataInputStream in, Block block, ByteBuffer weights) throws IOException {
    byte[] scales = new byte[block.rows() * FLOAT];
    in.readFully(scales);
    ByteBuffer scale = ByteBuffer.wrap(scales).order(ByteOrder.LITTLE_ENDIAN);
    byte[] row = new byte[block.columns()];
    for (int r = 0; r < block.rows(); r++) {
      in.readFully(row);
      int at = block.begin() + r * block.columns() * FLOAT;
      float each = scale.getFloat(r * FLOAT);
      for (byte steps : row) {
        // The product is rounded before the sum, as difference.py does it.
        float difference = each * steps;
        weights.putFloat(at, weights.getFloat(at) + difference);
        at += FLOAT;
      }
    }
  }

  private static void expect(String digest, byte[] data, Path where) throws IOException {
    String found = Sha256.hexOf(data);
    if (!found.equals(digest)) {
      throw new UnusableModelException(
          "expected SHA-256 %s of %s, found %s".formatted(digest, where, found));
    }
  }
}
