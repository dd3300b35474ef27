package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.audio.Pcm;
import tiptoe.audio.Segment;
import tiptoe.audio.SegmentStore;
import tiptoe.audio.SoundSeal;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Heard;
import tiptoe.exam.Signature;
import tiptoe.exam.UnheardSound;
import tiptoe.exam.Utterance;
import tiptoe.files.Sha256;

/** Compares the sound that is kept with what the record says of it. */
final class AudioCheck {
  /** Sound up to here may be lost in a crash: it is forced to the disk every second. */
  private static final double TOLERANCE = 1.0;

  private final ExamFolder folder;
  private final ExamRecord record;
  private final boolean encrypted;
  private final Ending ending;
  private final List<Segment> segments;

  /** Name to SHA-256 of every segment, as it was when it was complete. */
  private final Map<String, String> noted = new TreeMap<>();

  private final List<String> problems = new ArrayList<>();

  private AudioCheck(ExamFolder folder, ExamRecord record, SoundSeal seal, Ending ending)
      throws IOException {
    this.folder = folder;
    this.record = record;
    encrypted = seal != null;
    this.ending = ending;
    segments = SegmentStore.segments(folder.audio());
    record
        .events(Event.SegmentKept.class)
        .forEach(segment -> noted.put(segment.file(), segment.sha256()));
  }

  /** Name to SHA-256 of every segment. */
  static Map<String, String> hashes(ExamFolder folder) throws IOException {
    Map<String, String> hashes = new TreeMap<>();
    for (Segment segment : SegmentStore.segments(folder.audio())) {
      hashes.put(name(segment), Sha256.hex(Sha256.of(segment.file())));
    }
    return hashes;
  }

  static String name(Segment segment) {
    return segment.file().getFileName().toString();
  }

  /**
   * What is wrong with the sound, for people; empty when nothing is.
   *
   * @param seal of the record; null when it is not encrypted
   */
  static List<String> problems(ExamFolder folder, ExamRecord record, SoundSeal seal, Ending ending)
      throws IOException {
    AudioCheck check = altered(folder, record, seal, ending);
    check.unfinished();
    check.lostBeforeSigning();
    if (!EntryOrder.removedSound(record)) {
      check.spans();
    }
    return check.problems;
  }

  /** The same without what a full disk or a crash explains: sound that was never stored. */
  static List<String> changes(ExamFolder folder, ExamRecord record, SoundSeal seal, Ending ending)
      throws IOException {
    return altered(folder, record, seal, ending).problems;
  }

  /** The segments that a break left behind those that are noted. */
  static List<Segment> unfinished(ExamFolder folder, ExamRecord record) throws IOException {
    return new AudioCheck(folder, record, null, Ending.BROKEN_OFF).behind();
  }

  private List<Segment> behind() {
    return segments.stream().filter(this::isBehind).toList();
  }

  private boolean isBehind(Segment segment) {
    return noted.keySet().stream().allMatch(name -> name.compareTo(name(segment)) < 0);
  }

  private static AudioCheck altered(
      ExamFolder folder, ExamRecord record, SoundSeal seal, Ending ending) throws IOException {
    AudioCheck check = new AudioCheck(folder, record, seal, ending);
    check.kinds();
    if (record.signatures().isEmpty()) {
      check.kept();
    } else {
      check.signed();
    }
    return check;
  }

  /** Sound is encrypted where the journal is, and nowhere else. */
  private void kinds() {
    if (Files.isSymbolicLink(folder.audio())) {
      problems.add("the folder of the sound is a link to another");
    }
    for (Segment segment : segments) {
      if (!Files.isRegularFile(segment.file(), LinkOption.NOFOLLOW_LINKS)) {
        problems.add("sound " + name(segment) + " is no file of its own");
      } else if (name(segment).endsWith(".sealed") != encrypted) {
        String other =
            encrypted ? "not encrypted, as the journal is" : "encrypted, and the journal is not";
        problems.add("sound " + name(segment) + " is " + other);
      }
    }
  }

  /** Every segment that was complete before signing is there and is as it was. */
  private void kept() throws IOException {
    compare(noted, "it was recorded");
    for (Segment segment : segments) {
      // The last one is not complete until the examination is left.
      boolean mayBe = ending != Ending.CLOSED && isBehind(segment);
      if (!noted.containsKey(name(segment)) && !mayBe) {
        problems.add("sound " + name(segment) + " was added to what was recorded");
      }
    }
  }

  private void unfinished() {
    if (ending == Ending.BROKEN_OFF && record.signatures().isEmpty()) {
      for (Segment segment : behind()) {
        problems.add("sound " + name(segment) + " was unfinished, and may be changed");
      }
    }
  }

  /** What was signed though it was not as it had been recorded, by somebody who was told so. */
  private void lostBeforeSigning() {
    if (record.signatures().isEmpty()) {
      return;
    }
    Map<String, String> signed = record.signatures().get(0).audio();
    compare(noted, signed, "was lost before it was signed", "was changed before it was signed");
    if (!noted.isEmpty()) {
      signed.keySet().stream()
          .filter(file -> !noted.containsKey(file))
          .forEach(file -> problems.add("sound " + file + " was added before it was signed"));
    }
  }

  /** Every segment that was signed is there and is as it was, and there is no other. */
  private void signed() throws IOException {
    Signature last = record.signatures().get(record.signatures().size() - 1);
    Map<String, String> signed = last.audio();
    if (EntryOrder.removedSound(record)) {
      // Where a crash came between noting the removal and removing, some may be there still.
      signed = new TreeMap<>(signed);
      List<String> there = segments.stream().map(AudioCheck::name).toList();
      signed.keySet().retainAll(there);
    }
    compare(signed, "it was signed");
    for (Segment segment : segments) {
      if (!signed.containsKey(name(segment))) {
        problems.add("sound " + name(segment) + " was added since it was signed");
      }
    }
  }

  private void compare(Map<String, String> expected, String since) throws IOException {
    compare(expected, hashes(folder), "is missing since " + since, "was changed since " + since);
  }

  private void compare(
      Map<String, String> expected, Map<String, String> found, String missing, String changed) {
    expected.forEach(
        (file, hash) -> {
          if (!found.containsKey(file)) {
            problems.add("sound " + file + " " + missing);
          } else if (!found.get(file).equals(hash)) {
            problems.add("sound " + file + " " + changed);
          }
        });
  }

  /** Every utterance lies in sound that is kept, or in a gap that is noted. */
  private void spans() {
    if (segments.isEmpty()) {
      return;
    }
    for (Utterance utterance : record.utterances()) {
      Heard heard = utterance.heard();
      if (heard.end() > heard.start() && missing(heard) > TOLERANCE) {
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

  private double missing(Heard heard) {
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
