package tiptoe.graph;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tiptoe.files.BoundedFile;
import tiptoe.grammar.Problem;

/**
 * How words are said: the pronunciations of our own file first, the model's lexicon for words that
 * the file does not have. A line is
 *
 * <pre>
 * word PH PH …            ARPABET phones
 * word ~ known words …    sounds like these words
 * </pre>
 *
 * Several lines for one word are variants; {@code #} begins a comment. A word that stands in its
 * own {@code ~} line means the lexicon's pronunciation.
 */
public final class Pronunciations {
  /** Variants of one word are held below this; more would only slow the search. */
  static final int MOST_VARIANTS = 12;

  private static final Pattern FIELD = Pattern.compile("\\S+");

  /** A field of a line, with its column from 1. */
  private record Field(String text, int column) {}

  private record Entry(int line, Field word, boolean soundsLike, List<Field> fields) {}

  private final String file;
  private final Function<String, List<Pronunciation>> below;
  private final boolean adds;
  private final List<Problem> belowProblems;
  private final Map<String, List<Entry>> entries = new LinkedHashMap<>();
  private final Map<String, List<Pronunciation>> resolved = new HashMap<>();
  private final Set<String> open = new HashSet<>();
  private final List<Problem> problems = new ArrayList<>();

  private Pronunciations(
      String file,
      List<String> lines,
      Function<String, List<Pronunciation>> below,
      boolean adds,
      List<Problem> belowProblems) {
    this.file = file;
    this.below = below;
    this.adds = adds;
    this.belowProblems = belowProblems;
    for (int i = 0; i < lines.size(); i++) {
      readLine(i + 1, lines.get(i));
    }
    entries.keySet().forEach(this::of);
  }

  /** Reads a file; what is wrong in it shows in {@link #problems}. */
  public static Pronunciations read(Path file, Lexicon lexicon) throws IOException {
    return parse(file.getFileName().toString(), BoundedFile.TEXT.lines(file), lexicon);
  }

  /** The same from lines of text. */
  public static Pronunciations parse(String file, List<String> lines, Lexicon lexicon) {
    return new Pronunciations(file, lines, lexicon::of, false, List.of());
  }

  /** Several files, the first above the lexicon; what stands in the others is added to it. */
  public static Pronunciations read(List<Path> files, Lexicon lexicon) throws IOException {
    Pronunciations all = read(files.get(0), lexicon);
    for (Path file : files.subList(1, files.size())) {
      all = all.with(file.getFileName().toString(), BoundedFile.TEXT.lines(file));
    }
    return all;
  }

  /** These and further lines, whose pronunciations are variants beside what holds here. */
  public Pronunciations with(String name, List<String> lines) {
    return new Pronunciations(name, lines, this::of, true, problems());
  }

  /** What is wrong with the files, in the order of their lines. */
  public List<Problem> problems() {
    return Stream.concat(belowProblems.stream(), problems.stream()).toList();
  }

  /** The words that the file has. */
  public Set<String> listed() {
    return Set.copyOf(entries.keySet());
  }

  /** The pronunciations of a word; none when neither the file nor the lexicon has it. */
  public List<Pronunciation> of(String word) {
    List<Entry> lines = entries.get(word);
    if (lines == null) {
      return below.apply(word);
    }
    List<Pronunciation> known = resolved.get(word);
    if (known == null) {
      open.add(word);
      Set<Pronunciation> all = new LinkedHashSet<>();
      lines.forEach(line -> all.addAll(resolve(line)));
      open.remove(word);
      if (adds) {
        all.addAll(below.apply(word));
      }
      known = all.stream().limit(MOST_VARIANTS).toList();
      resolved.put(word, known);
    }
    return known;
  }

  private void readLine(int number, String line) {
    int comment = line.indexOf('#');
    List<Field> fields = fields(comment < 0 ? line : line.substring(0, comment));
    if (fields.isEmpty()) {
      return;
    }
    Field word = fields.get(0);
    boolean soundsLike = fields.size() > 1 && fields.get(1).text.equals("~");
    List<Field> rest = fields.subList(soundsLike ? 2 : 1, fields.size());
    if (rest.isEmpty()) {
      String expectation = soundsLike ? "words it sounds like" : "phones or ~";
      problem(number, word, expectation, "only " + line.strip());
    } else if (!word.text.equals(word.text.toLowerCase(Locale.ROOT))) {
      problem(number, word, "a word in lower case", word.text);
    } else {
      entries
          .computeIfAbsent(word.text, w -> new ArrayList<>(1))
          .add(new Entry(number, word, soundsLike, List.copyOf(rest)));
    }
  }

  private static List<Field> fields(String line) {
    List<Field> fields = new ArrayList<>();
    for (Matcher m = FIELD.matcher(line); m.find(); ) {
      fields.add(new Field(m.group(), m.start() + 1));
    }
    return fields;
  }

  private List<Pronunciation> resolve(Entry entry) {
    return entry.soundsLike ? soundsLike(entry) : spelled(entry).map(List::of).orElse(List.of());
  }

  private Optional<Pronunciation> spelled(Entry entry) {
    List<Phone> phones = new ArrayList<>();
    for (Field field : entry.fields) {
      Optional<Phone> phone = Phone.parse(field.text);
      if (phone.isEmpty()) {
        problem(entry.line, field, "an ARPABET phone", field.text);
        return Optional.empty();
      }
      phones.add(phone.get());
    }
    return Optional.of(new Pronunciation(phones));
  }

  private List<Pronunciation> soundsLike(Entry entry) {
    List<Pronunciation> sofar = List.of();
    for (Field field : entry.fields) {
      List<Pronunciation> next = known(entry, field);
      if (next.isEmpty()) {
        return List.of();
      }
      sofar = sofar.isEmpty() ? next : product(sofar, next);
    }
    return sofar;
  }

  private List<Pronunciation> known(Entry entry, Field field) {
    if (field.text.equals(entry.word.text)) {
      List<Pronunciation> own = below.apply(field.text);
      if (own.isEmpty()) {
        problem(entry.line, field, "a word that the model knows", field.text);
      }
      return own;
    }
    if (open.contains(field.text)) {
      problem(entry.line, field, "words that do not refer back", field.text);
      return List.of();
    }
    List<Pronunciation> all = of(field.text);
    if (all.isEmpty() && !entries.containsKey(field.text)) {
      problem(entry.line, field, "a word that the model or this file knows", field.text);
    }
    return all;
  }

  private static List<Pronunciation> product(List<Pronunciation> first, List<Pronunciation> then) {
    return first.stream().flatMap(a -> then.stream().map(a::then)).limit(MOST_VARIANTS).toList();
  }

  private void problem(int line, Field at, String expectation, String found) {
    problems.add(new Problem(file, line, at.column, expectation, found));
  }
}
