package tiptoe.graph;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A speech model of all phones and one word, "no", in the formats of a real one: small enough to be
 * read many thousand times a second.
 */
final class TinyModel {
  private static final int OPENFST = 2125659606;
  private static final int SYMBOLS = 2125658996;
  private static final int LOOKAHEAD = 0x1A9FD15A;
  private static final int WORD = 3;

  private TinyModel() {}

  static void write(Path folder) throws IOException {
    Files.write(folder.resolve(ModelFolder.TRANSITIONS), transitions());
    Files.write(folder.resolve(ModelFolder.GRAPH), graph());
    Files.write(folder.resolve(ModelFolder.WORDS), symbols());
    Files.writeString(folder.resolve(ModelFolder.WORD_BOUNDARY), boundaries());
    Files.writeString(folder.resolve(ModelFolder.FEATURES), "--sample-frequency=16000\n");
  }

  /** One tuple for each phone, in order; so the forward id of phone p is 2p. */
  static byte[] transitions() {
    Bytes out = new Bytes().raw(0, 'B').token("<TransitionModel>").token("<Topology>");
    out.sized(Phone.LAST);
    for (int phone = 1; phone <= Phone.LAST; phone++) {
      out.int32(phone);
    }
    out.sized(1).int32(0); // phone to entry: not looked at
    out.sized(-1).sized(1).sized(2); // one entry of two states, loops of their own
    out.sized(0).sized(1).sized(2).sized(0).sizedFloat32().sized(1).sizedFloat32();
    out.sized(-1).sized(-1).sized(0);
    out.token("</Topology>").token("<Tuples>").sized(Phone.LAST);
    for (int phone = 1; phone <= Phone.LAST; phone++) {
      out.sized(phone).sized(0).sized(2 * phone).sized(2 * phone + 1);
    }
    return out.bytes();
  }

  /** Silence, then N at the beginning and OW at the end of a word, then back. */
  static byte[] graph() {
    int n = 2 * Phone.N.at(Phone.Place.BEGIN);
    int ow = 2 * Phone.OW.at(Phone.Place.END);
    int[][] arcs = {{2 * Phone.SILENCE, 0, 1}, {n, WORD, 2}, {ow, 0, 3}};
    Bytes out = new Bytes().header("olabel_lookahead", 0, 0, 0).int32(LOOKAHEAD);
    out.header("const", 0, 4, arcs.length);
    for (int state = 0; state < 4; state++) {
      out.float32().int32(Math.min(state, 3)).int32(state < 3 ? 1 : 0).int32(0).int32(0);
    }
    for (int[] arc : arcs) {
      out.int32(arc[0]).int32(arc[1]).float32().int32(arc[2]);
    }
    return out.bytes();
  }

  static byte[] symbols() {
    Bytes out = new Bytes().header("ngram", 2, 1, 0).int32(SYMBOLS).string("words").int64(4);
    out.int64(4);
    String[] words = {"<eps>", "#0", "[unk]", "no"};
    for (int label = 0; label < words.length; label++) {
      out.string(words[label]).int64(label);
    }
    return out.bytes();
  }

  static String boundaries() {
    StringBuilder text = new StringBuilder();
    String[] kinds = {"begin", "end", "internal", "singleton"};
    for (int phone = 1; phone <= Phone.LAST; phone++) {
      String kind = phone < 11 ? "nonword" : kinds[(phone - 11) % 4];
      text.append(phone).append(' ').append(kind).append('\n');
    }
    return text.toString();
  }

  /** Little-endian output in the ways of Kaldi and OpenFst. */
  private static final class Bytes {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    Bytes raw(int... bytes) {
      for (int b : bytes) {
        out.write(b);
      }
      return this;
    }

    Bytes token(String token) {
      out.writeBytes((token + " ").getBytes(StandardCharsets.US_ASCII));
      return this;
    }

    Bytes sized(int value) {
      return raw(4).int32(value);
    }

    Bytes float32() {
      return int32(Float.floatToIntBits(0.5f));
    }

    Bytes sizedFloat32() {
      return raw(4).float32();
    }

    Bytes int32(int value) {
      out.writeBytes(ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(value).array());
      return this;
    }

    Bytes int64(long value) {
      out.writeBytes(ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN).putLong(value).array());
      return this;
    }

    Bytes string(String text) {
      int32(text.length());
      out.writeBytes(text.getBytes(StandardCharsets.US_ASCII));
      return this;
    }

    Bytes header(String type, int flags, long states, long arcs) {
      int32(OPENFST).string(type).string("standard").int32(2).int32(flags).int64(0);
      return int64(0).int64(states).int64(arcs);
    }

    byte[] bytes() {
      return out.toByteArray();
    }
  }
}
