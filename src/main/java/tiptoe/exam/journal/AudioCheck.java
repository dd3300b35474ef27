package tiptoe.exam.journal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.audio.Pcm;
import tiptoe.audio.Segment;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Hashes;
import tiptoe.exam.Heard;
import tiptoe.exam.Signature;
import tiptoe.exam.UnheardSound;
import tiptoe.exam.Utterance;

/** Compares the sound that is kept with what the record says of it. */
final class AudioCheck {
  /** Sound up to here may be lost in a crash: it is forced to the disk every second. */
  private static final double TOLERANCE = 1.0;

  private final ExamFolder folder;
  private final ExamRecord record;
  private final List<String> problems = new ArrayList<>();

  private AudioCheck(ExamFolder folder, ExamRecord record) {
    this.folder = folder;
    this.record = record;
  }

  /** Name to SHA-256 of every segment. */
  static Map<String, String> hashes(ExamFolder folder) throws IOException {
    Map<String, String> hashes = new TreeMap<>();
    for (Segment segment : SegmentStore.segments(folder.audio())) {
      hashes.put(segment.file().getFileName().toString(), hash(segment.file()));
    }
    return hashes;
  }

  private static String hash(Path file) throws IOException {
    MessageDigest digest = Hashes.digest();
    try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
      in.transferTo(java.io.OutputStream.nullOutputStream());
    }
    return Hashes.hex(digest.digest());
  }

  /** What is wrong with the sound, for people; empty when nothing is. */
  static List<String> problems(ExamFolder folder, ExamRecord record) throws IOException {
    AudioCheck check = new AudioCheck(folder, record);
    if (!check.wasRemoved()) {
      check.signed();
      check.spans();
    }
    return check.problems;
  }

  private boolean wasRemoved() {
    return record.entries().stream()
        .map(Entry::event)
        .anyMatch(Event.AudioRemoved.class::isInstance);
  }

  /** Every segment that was signed is there and is as it was. */
  private void signed() throws IOException {
    if (record.signatures().isEmpty()) {
      return;
    }
    Map<String, String> now = hashes(folder);
    Signature last = record.signatures().get(record.signatures().size() - 1);
    last.audio()
        .forEach(
            (file, hash) -> {
              if (!now.containsKey(file)) {
                problems.add("sound " + file + " is missing since it was signed");
              } else if (!now.get(file).equals(hash)) {
                problems.add("sound " + file + " was changed since it was signed");
              }
            });
  }

  /** Every utterance lies in sound that is kept, or in a gap that is noted. */
  private void spans() throws IOException {
    List<Segment> segments = SegmentStore.segments(folder.audio());
    if (segments.isEmpty()) {
      return;
    }
    for (Utterance utterance : record.utterances()) {
      Heard heard = utterance.heard();
      if (heard.end() > heard.start() && missing(heard, segments) > TOLERANCE) {
        problems.add(
            String.format(
                Locale.ROOT,
                "utterance %d (%.1f to %.1f s) has no sound",
                utterance.number(),
                heard.start(),
                heard.end()));
      }
    }
  }

  private double missing(Heard heard, List<Segment> segments) {
    double kept = 0;
    for (Segment segment : segments) {
      kept += overlap(heard, seconds(segment.position()), seconds(segment.end()));
    }
    for (UnheardSound gap : record.gaps()) {
      kept += overlap(heard, gap.from(), gap.from() + gap.seconds());
    }
    return heard.end() - heard.start() - kept;
  }

  private static double seconds(long samples) {
    return (double) samples / Pcm.RATE;
  }

  private static double overlap(Heard heard, double from, double to) {
    return Math.max(0, Math.min(heard.end(), to) - Math.max(heard.start(), from));
  }
}
