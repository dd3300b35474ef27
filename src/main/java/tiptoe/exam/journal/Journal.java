package tiptoe.exam.journal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.EventSink;
import tiptoe.exam.NotRecorded;

/**
 * Writes events behind those before, and returns when the disk says it has them. All events of a
 * call are one write and one wait. When a write fails, what there is of it is cut off again; when
 * that fails too, or the disk cannot be waited for, nothing more is taken, because nobody knows
 * what is on the disk then.
 */
final class Journal implements EventSink, AutoCloseable {
  private final FileChannel channel;
  private final Chain chain;
  private final LineCodec codec;
  private long length;
  private boolean unsafe;

  Journal(FileChannel channel, long length, Chain chain, LineCodec codec) {
    this.channel = channel;
    this.length = length;
    this.chain = chain;
    this.codec = codec;
  }

  @Override
  public synchronized List<Entry> append(Instant at, List<Event> events) {
    if (unsafe) {
      throw new NotRecorded("nothing more is recorded since the disk failed: open it again", null);
    }
    Chain ahead = chain.copy();
    List<Chain.Line> lines = new ArrayList<>();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (Event event : events) {
      Chain.Line line = ahead.next(at, event);
      ahead.accept(line);
      lines.add(line);
      out.writeBytes(codec.store(line.bytes()));
      out.write('\n');
    }
    write(out.toByteArray());
    lines.forEach(chain::accept);
    return lines.stream().map(Chain.Line::entry).toList();
  }

  private void write(byte[] bytes) {
    try {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        channel.write(buffer, length + buffer.position());
      }
    } catch (IOException e) {
      cutOff();
      throw notRecorded(e);
    }
    try {
      channel.force(false);
    } catch (IOException e) {
      unsafe = true;
      throw notRecorded(e);
    }
    length += bytes.length;
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
    channel.close();
  }
}
