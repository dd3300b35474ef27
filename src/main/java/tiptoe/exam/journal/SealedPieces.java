package tiptoe.exam.journal;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import tiptoe.files.Sha256;

/**
 * A stream encrypted in pieces of 64 KiB: four bytes for the length of what is stored, then nonce,
 * ciphertext and tag. Each is bound to the header, to its number and to whether it is the last.
 */
final class SealedPieces {
  private static final int PIECE = 64 << 10;
  private static final int MOST_STORED = PIECE + 12 + 16;

  private SealedPieces() {}

  private static byte[] bound(DataKey key, long number, boolean last) {
    return ("archive " + Sha256.hexOf(key.header()) + " " + number + (last ? " last" : " more"))
        .getBytes(StandardCharsets.UTF_8);
  }

  /** Encrypts. Only what was closed is whole. */
  static final class Out extends OutputStream {
    private final OutputStream out;
    private final DataKey key;
    private final ByteBuffer piece = ByteBuffer.allocate(PIECE);
    private long number;
    private boolean closed;

    Out(OutputStream out, DataKey key) {
      this.out = out;
      this.key = key;
    }

    @Override
    public void write(int one) throws IOException {
      write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
      int at = from;
      while (at < from + count) {
        if (!piece.hasRemaining()) {
          seal(false);
        }
        int part = Math.min(piece.remaining(), from + count - at);
        piece.put(bytes, at, part);
        at += part;
      }
    }

    private void seal(boolean last) throws IOException {
      byte[] plain = new byte[piece.flip().remaining()];
      piece.get(plain).clear();
      byte[] stored = key.encrypt(plain, bound(key, number++, last));
      out.write(ByteBuffer.allocate(4).putInt(stored.length).array());
      out.write(stored);
    }

    @Override
    public void close() throws IOException {
      if (!closed) {
        closed = true;
        seal(true);
        out.flush();
      }
    }
  }

  /** Decrypts, and gives out nothing that was not sealed by this key in this place. */
  static final class In extends InputStream {
    private final InputStream in;
    private final DataKey key;
    private byte[] piece = new byte[0];
    private int at;
    private long number;
    private boolean last;

    In(InputStream in, DataKey key) {
      this.in = in;
      this.key = key;
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] bytes, int from, int count) throws IOException {
      while (at == piece.length) {
        if (last) {
          return -1;
        }
        next();
      }
      int part = Math.min(count, piece.length - at);
      System.arraycopy(piece, at, bytes, from, part);
      at += part;
      return part;
    }

    private void next() throws IOException {
      byte[] size = in.readNBytes(4);
      int length = size.length < 4 ? -1 : ByteBuffer.wrap(size).getInt();
      if (length < 0 || length > MOST_STORED) {
        throw new IOException("the archive is not whole: piece " + number + " was cut or changed");
      }
      byte[] stored = in.readNBytes(length);
      piece = open(stored);
      number++;
      at = 0;
      if (last && in.read() >= 0) {
        throw new IOException("the archive is not whole: something was added behind its end");
      }
    }

    private byte[] open(byte[] stored) throws IOException {
      try {
        return key.decrypt(stored, bound(key, number, false));
      } catch (GeneralSecurityException e) {
        try {
          byte[] plain = key.decrypt(stored, bound(key, number, true));
          last = true;
          return plain;
        } catch (GeneralSecurityException again) {
          throw new IOException(
              "the archive is not whole: piece " + number + " was cut or changed", again);
        }
      }
    }

    @Override
    public void close() throws IOException {
      in.close();
    }
  }
}
