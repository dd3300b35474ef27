package tiptoe.session;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import tiptoe.audio.Chunk;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.measure.MeasuredPipeline;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Joiner;
import tiptoe.speech.Recogniser;
import tiptoe.speech.Word;

/**
 * What was heard in sounds, kept by the SHA-256 of the samples, so that deciding can be measured
 * again without hearing again.
 */
final class KeptHearing {
  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * An utterance and when it was handed out.
   *
   * @param at how much of the sound had been heard, in s
   */
  record Kept(double at, Hypothesis utterance) {}

  private KeptHearing() {}

  private static List<Chunk> all(SampleSource sound) throws IOException {
    List<Chunk> all = new ArrayList<>();
    for (Optional<Chunk> next = sound.next(); next.isPresent(); next = sound.next()) {
      all.add(next.get());
    }
    return all;
  }

  private static String hash(List<Chunk> chunks) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (Chunk chunk : chunks) {
        ByteBuffer bytes = ByteBuffer.allocate(2 * chunk.samples().length);
        bytes.asShortBuffer().put(chunk.samples());
        digest.update(bytes.array());
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Hears as {@link Dictation} does, and closes the recogniser. */
  static List<Kept> hear(Recogniser opened, Understanding understanding, Pcm sound) {
    Joiner joiner = new Joiner(new ContinuablePhrases(understanding.network()));
    List<Kept> kept = new ArrayList<>();
    int piece = Pcm.RATE / 10;
    short[] samples = sound.samples();
    double seconds = sound.seconds();
    try (Recogniser recogniser = opened) {
      for (int at = 0; at < samples.length; at += piece) {
        int length = Math.min(piece, samples.length - at);
        double now = (double) (at + length) / Pcm.RATE;
        List<Hypothesis> ready = new ArrayList<>();
        recogniser.accept(samples, at, length).forEach(one -> ready.addAll(joiner.hear(one)));
        ready.addAll(joiner.wait(now, !recogniser.partial().isBlank(), recogniser.isQuiet()));
        ready.forEach(one -> kept.add(new Kept(now, one)));
      }
      List<Hypothesis> last = new ArrayList<>();
      recogniser.finish().ifPresent(one -> last.addAll(joiner.hear(one)));
      last.addAll(joiner.end());
      last.forEach(one -> kept.add(new Kept(seconds, one)));
    }
    return kept;
  }

  /** What was heard in a sound as one line. */
  static ObjectNode line(Pcm sound, List<Kept> kept) {
    ObjectNode line = JSON.createObjectNode();
    line.put("sound", hash(sound.samples())).put("seconds", sound.seconds());
    ArrayNode utterances = line.putArray("heard");
    kept.forEach(one -> utterances.add(json(one)));
    return line;
  }

  private static String hash(short[] samples) {
    try {
      ByteBuffer bytes = ByteBuffer.allocate(2 * samples.length);
      bytes.asShortBuffer().put(samples);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes.array()));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static ObjectNode json(Kept kept) {
    Hypothesis heard = kept.utterance();
    ObjectNode node = JSON.createObjectNode();
    node.put("at", kept.at()).put("start", heard.start()).put("end", heard.end());
    node.put("left-over", heard.leftOver());
    words(node.putArray("words"), heard.words());
    weighed(node, heard);
    heard
        .freely()
        .ifPresent(
            one -> {
              ObjectNode free = node.putObject("free");
              words(free.putArray("words"), one.words());
              weighed(free, one);
            });
    return node;
  }

  private static void weighed(ObjectNode node, Hypothesis heard) {
    heard
        .support()
        .ifPresent(
            support -> {
              node.put("support", support);
              rivals(node.putArray("rivals"), heard.rivals());
            });
  }

  private static void words(ArrayNode into, List<Word> words) {
    words.forEach(
        one ->
            into.add(
                JSON.createArrayNode()
                    .add(one.text())
                    .add(one.start())
                    .add(one.end())
                    .add(one.confidence())));
  }

  private static void rivals(ArrayNode into, List<Hypothesis.Rival> rivals) {
    rivals.forEach(one -> into.add(JSON.createArrayNode().add(one.text()).add(one.margin())));
  }

  private static List<Word> words(JsonNode node) {
    List<Word> words = new ArrayList<>();
    node.forEach(
        one ->
            words.add(
                new Word(
                    one.get(0).asText(),
                    one.get(1).asDouble(),
                    one.get(2).asDouble(),
                    one.get(3).asDouble())));
    return words;
  }

  private static List<Hypothesis.Rival> rivals(JsonNode node) {
    List<Hypothesis.Rival> rivals = new ArrayList<>();
    node.forEach(
        one -> rivals.add(new Hypothesis.Rival(one.get(0).asText(), one.get(1).asDouble())));
    return rivals;
  }

  private static Hypothesis weighed(JsonNode node, Hypothesis heard) {
    return node.has("support")
        ? heard.weighed(node.get("support").asDouble(), rivals(node.path("rivals")))
        : heard;
  }

  static Kept kept(JsonNode node) {
    Hypothesis heard =
        weighed(
            node,
            new Hypothesis(
                node.path("start").asDouble(),
                node.path("end").asDouble(),
                words(node.path("words"))));
    if (node.has("free")) {
      JsonNode free = node.get("free");
      List<Word> words = words(free.path("words"));
      heard =
          heard.freely(
              weighed(
                  free,
                  new Hypothesis(words.get(0).start(), words.get(words.size() - 1).end(), words)));
    }
    return new Kept(node.path("at").asDouble(), heard.leftOver(node.path("left-over").asDouble()));
  }

  /** Decides about what was heard before. */
  static final class Reading implements MeasuredPipeline {
    private final Map<String, List<Kept>> all = new HashMap<>();
    private final Understanding understanding;
    private final MeasuredSession session;
    private final Settings settings;

    Reading(
        Understanding understanding, MeasuredSession session, Settings settings, List<Path> files)
        throws IOException {
      this.settings = settings;
      this.understanding = understanding;
      this.session = session;
      for (Path file : files) {
        for (String line : Files.readAllLines(file)) {
          JsonNode node = JSON.readTree(line);
          List<Kept> kept = new ArrayList<>();
          node.path("heard").forEach(one -> kept.add(kept(one)));
          all.put(node.path("sound").asText(), kept);
        }
      }
    }

    @Override
    public ExamRecord hear(SampleSource sound, Consumer<Changes> heard) throws IOException {
      String hash = hash(all(sound));
      if (!all.containsKey(hash)) {
        throw new IOException("never heard " + hash);
      }
      ExamSession examination = Sessions.inMemory(understanding, settings);
      for (Kept kept : all.get(hash)) {
        if (examination.record().phase() != Phase.ENDED) {
          heard.accept(examination.hear(kept.utterance(), 0));
        }
      }
      return examination.record();
    }

    @Override
    public ExamRecord read(List<String> lines, Consumer<Changes> taken) {
      return session.read(lines, taken);
    }

    @Override
    public List<String> words(String line) {
      return session.words(line);
    }
  }
}
