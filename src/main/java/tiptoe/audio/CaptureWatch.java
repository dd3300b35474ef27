package tiptoe.audio;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Gives captured samples their place in the recording and notices when they fail to come. Knows no
 * threads and no clock: it is told the time. It goes by the time of day, since that goes on while a
 * computer sleeps.
 */
final class CaptureWatch {
  /** How long nothing, or nothing but zeros, may come: trouble must be told within 3 s. */
  static final Duration PATIENCE = Duration.ofMillis(2500);

  /** Less than this is the clock's and the driver's unevenness, not a loss. */
  private static final long LEAST_LOSS = Pcm.RATE / 20;

  private static final int LONGEST_CHUNK = Pcm.RATE / 5;
  private static final long PATIENCE_SAMPLES = samples(PATIENCE);

  private final List<CaptureEvent> events = new ArrayList<>();
  private Duration driverBuffer = Duration.ofSeconds(1);
  private Instant lastPoll;
  private Instant lastSound;
  private boolean begun;
  private boolean away;
  private long position;
  private long zeros;

  /** The trouble that there is, or null. */
  private Gap.Cause cause;

  private Instant troubleSince;
  private long troubleFrom;

  CaptureWatch(Instant start) {
    lastPoll = start;
    lastSound = start;
  }

  /** Place of the next sample. */
  long position() {
    return position;
  }

  /** What happened since the last call. */
  List<CaptureEvent> takeEvents() {
    List<CaptureEvent> taken = List.copyOf(events);
    events.clear();
    return taken;
  }

  /**
   * A line has been opened, for the first time or again.
   *
   * @param buffer sound that the driver keeps for us; if we are away for longer, some is lost
   */
  void opened(Instant now, Duration buffer) {
    lastPoll = now;
    driverBuffer = buffer;
    away = false;
  }

  /** The line failed, or could not be opened. */
  void broke(Instant now, String detail) {
    trouble(Gap.Cause.GONE, lastSound, now, detail);
  }

  /** To be called often: notices that nothing comes. */
  void check(Instant now) {
    if (now.isBefore(lastSound)) {
      lastSound = now; // the clock was put back
    }
    boolean stalled = Duration.between(lastSound, now).compareTo(PATIENCE) >= 0;
    if (stalled && cause != Gap.Cause.GONE) {
      trouble(Gap.Cause.STALLED, lastSound, now, "");
    }
  }

  /**
   * The line was asked for sound and gave these samples, possibly none.
   *
   * @return the samples in their places
   */
  List<Chunk> polled(Instant now, short[] samples) {
    away |= Duration.between(lastPoll, now).compareTo(driverBuffer) > 0;
    lastPoll = now;
    if (samples.length == 0) {
      return List.of();
    }
    if (away && begun && cause != Gap.Cause.GONE && missing(now, samples.length) >= LEAST_LOSS) {
      trouble(Gap.Cause.OVERRUN, lastSound, now, "");
    }
    away = false;
    long lost = 0;
    if (cause != null && cause != Gap.Cause.SILENT) {
      lost = begun ? missing(now, samples.length) : 0;
      position += lost;
      recover(now);
    }
    begun = true;
    lastSound = now;
    List<Chunk> chunks = place(samples, lost);
    listenForZeros(now, samples);
    return chunks;
  }

  /** Samples that should have come since the last ones did, less those that have. */
  private long missing(Instant now, int arrived) {
    return Math.max(0, samples(Duration.between(lastSound, now)) - arrived);
  }

  private void trouble(Gap.Cause found, Instant since, Instant now, String detail) {
    if (cause == found) {
      return;
    }
    if (cause == null) {
      troubleSince = since;
      troubleFrom = position;
    }
    cause = found;
    events.add(new CaptureEvent.Trouble(troubleSince, now, found, detail));
  }

  private void recover(Instant now) {
    Gap gap = new Gap(troubleFrom, position, troubleSince, now, cause);
    events.add(new CaptureEvent.Recovered(gap));
    cause = null;
    zeros = 0;
  }

  private void listenForZeros(Instant now, short[] samples) {
    int trailing = trailingZeros(samples);
    if (trailing < samples.length) {
      if (cause == Gap.Cause.SILENT) {
        recover(now);
      }
      zeros = trailing;
      return;
    }
    zeros += samples.length;
    if (zeros >= PATIENCE_SAMPLES && cause == null) {
      Duration mute = Duration.ofMillis(zeros * 1000 / Pcm.RATE);
      trouble(Gap.Cause.SILENT, now.minus(mute), now, "");
      troubleFrom = position - zeros;
    }
  }

  private List<Chunk> place(short[] samples, long lost) {
    List<Chunk> chunks = new ArrayList<>();
    for (int at = 0; at < samples.length; at += LONGEST_CHUNK) {
      int end = Math.min(samples.length, at + LONGEST_CHUNK);
      short[] part = Arrays.copyOfRange(samples, at, end);
      Chunk chunk = new Chunk(position, at == 0 ? lost : 0, part);
      chunks.add(chunk);
      position = chunk.end();
    }
    return chunks;
  }

  private static int trailingZeros(short[] samples) {
    int count = 0;
    while (count < samples.length && samples[samples.length - 1 - count] == 0) {
      count++;
    }
    return count;
  }

  private static long samples(Duration duration) {
    return duration.toMillis() * Pcm.RATE / 1000;
  }
}
