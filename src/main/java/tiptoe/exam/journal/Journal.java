package tiptoe.exam.journal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.time.Instant;
import java.util.List;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.EventSink;
import tiptoe.exam.NotRecorded;
import tiptoe.files.Sha256;

/**
 * Writes events behind those before, and returns when the disk says it has them. All events of a
 * call are one write and one wait. When a write fails, what there is of it is cut off again; when
 * that fails too, or the disk cannot be waited for, nothing more is taken, because nobody knows
 * what is on the disk then.
 */
final class Journal implements EventSink, AutoCloseable {
  private final FileChannel channel;
  private final LinkedFile file;
  private final Reserve reserve;
  private final Chain chain;
  private final LineCodec codec;
  private long length;
  private String stored;
  private boolean unsafe;

  /**
   * @param folder where the channel's file is
   * @param stored SHA-256 of the last line as it is stored; empty where there is none
   */
  Journal(
      ExamFolder folder,
      FileChannel channel,
      long length,
      Chain chain,
      LineCodec codec,
      String stored)
      throws IOException {
    this.channel = channel;
    this.length = length;
    this.chain = chain;
    this.codec = codec;
    this.stored = stored;
    file = LinkedFile.of(folder.journal());
    reserve = Reserve.keep(folder.reserve());
  }

  @Override
  public synchronized List<Entry> append(Instant at, List<Event> events) {
    if (unsafe) {
      throw new NotRecorded("nothing more is recorded since the disk failed: open it again", null);
    }
    if (!isInPlace()) {
      unsafe = true;
      throw new NotRecorded(
          "not recorded: the folder of the record was removed or moved away: " + file, null);
    }
    String last = stored;
    List<Chain.Line> lines = chain.next(at, events);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (Chain.Line line : lines) {
      byte[] bytes = codec.store(line.bytes());
      last = Sha256.hexOf(bytes);
      out.writeBytes(bytes);
      out.write('\n');
    }
    write(out.toByteArray());
    lines.forEach(chain::accept);
    stored = last;
    return lines.stream().map(Chain.Line::entry).toList();
  }

  @Override
  public synchronized String headAfter(Instant at, List<Event> events) {
    return chain.headAfter(at, events);
  }

  boolean isInPlace() {
    return file.isStillThere();
  }

  synchronized long seq() {
    return chain.seq();
  }

  /** SHA-256 of the last line as it is stored. */
  synchronized String head() {
    return stored;
  }

  private void write(byte[] bytes) {
    try {
      writeOnce(bytes);
    } catch (IOException e) {
      cutOff();
      if (unsafe || !reserve.giveUp()) {
        throw notRecorded(e);
      }
      try {
        writeOnce(bytes);
      } catch (IOException again) {
        cutOff();
        throw notRecorded(again);
      }
    }
    try {
      channel.force(false);
    } catch (IOException e) {
      unsafe = true;
      throw notRecorded(e);
    }
    length += bytes.length;
  }

  private void writeOnce(byte[] bytes) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    while (buffer.hasRemaining()) {
      channel.write(buffer, length + buffer.position());
    }
  }

  private void cutOff() {
    try {
      channel.truncate(length);
    } catch (IOException e) {
      unsafe = true;
    }
  }

  private static NotRecorded notRecorded(IOException e) {
    return new NotRecorded("not recorded: " + RecordProblem.reason(e), e);
  }

  @Override
  public synchronized void close() throws IOException {
    reserve.giveUp();
    channel.close();
  }
}
