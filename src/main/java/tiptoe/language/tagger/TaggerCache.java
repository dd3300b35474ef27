package tiptoe.language.tagger;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.files.ContentCache;
import tiptoe.files.Sha256;
import tiptoe.files.Shipped;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * Keeps a trained tagger under the hash of what it was trained from, so that training is done once.
 * The file carries a hash of its own: a damaged one is trained anew.
 */
public final class TaggerCache {
  /** Changed whenever the way sentences are made or words are looked at changes. */
  private static final String VERSION = "5";

  private static final int HASH_BYTES = 32;

  private final ContentCache cache;

  public TaggerCache(ContentCache cache) {
    this.cache = cache;
  }

  /**
   * The tagger for these grammars, trained if it is not there yet.
   *
   * @param grammars the folder of the grammars, whose files decide whether it is trained anew
   * @param beforeTraining run only if it must be trained, which takes some seconds
   */
  public Tagger get(
      Path grammars,
      PhraseNetwork network,
      Protocol protocol,
      TypedText typed,
      Runnable beforeTraining)
      throws IOException {
    String name = "tagger-" + ContentCache.digits(hash(grammars, protocol)) + ".bin";
    LayLexicon lexicon = LayLexiconReader.shipped(protocol, typed::words);
    ToldLexicon told = ToldLexicon.shipped(protocol, typed::words);
    for (Path file : cache.candidates(name)) {
      Tagger kept = kept(file, lexicon, told, protocol);
      if (kept != null) {
        return kept;
      }
    }
    beforeTraining.run();
    Tagger trained = Tagger.train(network, protocol, typed, lexicon, told);
    try {
      cache.put(name, part -> write(trained, part));
    } catch (IOException e) {
      // It is trained each time, no more.
    }
    return trained;
  }

  /** SHA-256 of all that a tagger is trained from. */
  public static String hash(Path grammars, Protocol protocol) throws IOException {
    MessageDigest digest = Sha256.start();
    digest.update(VERSION.getBytes(StandardCharsets.UTF_8));
    List<Path> files;
    try (var all = Files.list(grammars)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    for (Path file : files) {
      digest.update(file.getFileName().toString().getBytes(StandardCharsets.UTF_8));
      digest.update(Files.readAllBytes(file));
    }
    digest.update(String.join("\n", LayLexiconReader.text()).getBytes(StandardCharsets.UTF_8));
    for (String file : TalkModel.SOURCES.keySet()) {
      digest.update(Shipped.text(Interpreter.class, file).getBytes(StandardCharsets.UTF_8));
    }
    digest.update(protocol.regions().toString().getBytes(StandardCharsets.UTF_8));
    return Sha256.hex(digest.digest());
  }

  private static Tagger kept(Path file, LayLexicon lexicon, ToldLexicon told, Protocol protocol) {
    try {
      return read(file, lexicon, told, protocol);
    } catch (IOException e) {
      return null; // what cannot be read is trained anew
    }
  }

  private static Tagger read(Path file, LayLexicon lexicon, ToldLexicon told, Protocol protocol)
      throws IOException {
    if (!Files.isRegularFile(file)) {
      return null;
    }
    byte[] bytes = Files.readAllBytes(file);
    if (bytes.length <= HASH_BYTES) {
      return null;
    }
    byte[] content = Arrays.copyOf(bytes, bytes.length - HASH_BYTES);
    byte[] seal = Arrays.copyOfRange(bytes, content.length, bytes.length);
    if (!MessageDigest.isEqual(seal, Sha256.of(content))) {
      return null;
    }
    try (DataInputStream in =
        new DataInputStream(new BufferedInputStream(new java.io.ByteArrayInputStream(content)))) {
      Set<String> deniable = new TreeSet<>();
      int count = in.readInt();
      for (int i = 0; i < count; i++) {
        deniable.add(in.readUTF());
      }
      TalkModel talk = TalkModel.read(in, lexicon);
      return new Tagger(lexicon, told, protocol, SpanModel.read(in, lexicon), talk, deniable);
    }
  }

  private static void write(Tagger tagger, Path file) throws IOException {
    java.io.ByteArrayOutputStream bytes = new java.io.ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(bytes))) {
      out.writeInt(tagger.deniable().size());
      for (String one : new TreeSet<>(tagger.deniable())) {
        out.writeUTF(one);
      }
      tagger.talkModel().write(out);
      tagger.model().write(out);
    }
    byte[] content = bytes.toByteArray();
    Files.write(file, content);
    Files.write(file, Sha256.of(content), java.nio.file.StandardOpenOption.APPEND);
  }
}
