package tiptoe.language;

import java.io.IOException;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import tiptoe.files.BoundedFile;

/**
 * Turns typed text into the words of the grammars: lower case, numerals in words, American spelling
 * and short forms as {@code spellings.txt} maps them.
 */
public final class TypedText {
  /** Stands among the words of a typed utterance where a comma, a dash or a bracket parts them. */
  public static final String BREAK = ",";

  /** Stands at the end of a typed utterance that is a question. */
  public static final String ASKS = "?";

  private static final Pattern SENTENCE_END =
      Pattern.compile("(?<!\\d)[.]|[.](?!\\d)|[!;\\n]+|(?<=[?])");
  private static final Pattern NUMERAL_AND_UNIT = Pattern.compile("(?<=\\d)(?=[a-z%°])");
  private static final Pattern NOT_A_WORD = Pattern.compile("[^a-z0-9'.\\[\\]]+");
  private static final Pattern CHUNK_END = Pattern.compile(",(?!\\d{3})|[():]| [-–—]+ |[–—]");
  private static final Pattern QUERIES = Pattern.compile("(?<![^\\s,;:(])[?]\\s*(?=\\p{L})");
  private static final String OWNS = "'s";
  private static final Pattern NUMERAL = Pattern.compile("\\d+(\\.\\d+)?");
  private final Map<String, List<String>> spellings;

  private TypedText(Map<String, List<String>> spellings) {
    this.spellings = Map.copyOf(spellings);
  }

  /**
   * Reads {@code spellings.txt}: {@code american = words of the grammars}, one a line, comments
   * behind {@code #}.
   *
   * @throws IOException when it cannot be read, or a line is not of that form; names the line
   */
  public static TypedText load(Path spellings) throws IOException {
    Map<String, List<String>> map = new HashMap<>();
    int number = 0;
    for (String line : BoundedFile.TEXT.lines(spellings)) {
      number++;
      String text = line.replaceFirst("#.*", "").strip();
      if (text.isEmpty()) {
        continue;
      }
      String[] sides = text.split("\\s*=\\s*");
      if (sides.length != 2 || sides[0].isBlank() || sides[0].contains(" ")) {
        throw new IOException(
            spellings.getFileName() + ":" + number + ": expected word = words, found " + text);
      }
      map.put(sides[0], List.of(sides[1].split(" +")));
    }
    return new TypedText(map);
  }

  /** The sentences of a text, each an utterance of its own. */
  public static List<String> sentences(String text) {
    return SENTENCE_END
        .splitAsStream(queried(text))
        .map(String::strip)
        .filter(sentence -> sentence.chars().anyMatch(Character::isLetterOrDigit))
        .toList();
  }

  /**
   * The words of one utterance with {@link #BREAK} and {@link #ASKS} among them: they help to read
   * a sentence that no grammar lists.
   */
  public List<String> utterance(String text) {
    List<String> words = new ArrayList<>();
    for (String chunk : CHUNK_END.split(queried(text))) {
      List<String> chunkWords = words(chunk);
      if (!words.isEmpty() && !chunkWords.isEmpty()) {
        words.add(BREAK);
      }
      words.addAll(chunkWords);
    }
    if (text.strip().endsWith(ASKS)) {
      words.add(ASKS);
    }
    return words;
  }

  // "? murmur", "left hip ?click" as notes put it.
  private static String queried(String text) {
    return QUERIES.matcher(text).replaceAll("query ");
  }

  /** The words without {@link #BREAK} and {@link #ASKS}. */
  public static List<String> plain(List<String> utterance) {
    return utterance.stream().filter(TypedText::isWord).toList();
  }

  /** Whether this is a word, and not {@link #BREAK} or {@link #ASKS}. */
  public static boolean isWord(String word) {
    return !word.equals(BREAK) && !word.equals(ASKS);
  }

  /** The words of one utterance. */
  public List<String> words(String text) {
    String plain =
        Normalizer.normalize(text.toLowerCase(Locale.ROOT), Normalizer.Form.NFD)
            .replaceAll("\\p{M}", "")
            .replace('’', '\'')
            .replace("æ", "ae")
            .replace("œ", "oe");
    List<String> words = new ArrayList<>();
    for (String typed : plain.split("\\s+")) {
      if (spellings.containsKey(typed)) {
        words.addAll(spellings.get(typed));
        continue;
      }
      if (isOfLetters(typed)) {
        words.add(ScotsNegation.plain(typed));
        continue;
      }
      for (String piece :
          NOT_A_WORD.split(NUMERAL_AND_UNIT.matcher(symbols(typed)).replaceAll(" "))) {
        addPiece(piece.replaceAll("^[.']+|[.']+$", ""), words);
      }
    }
    return words;
  }

  // Most words are: they are taken as they are, without a look for signs and numerals.
  private static boolean isOfLetters(String typed) {
    return !typed.isEmpty() && typed.chars().allMatch(sign -> sign >= 'a' && sign <= 'z');
  }

  private static String symbols(String typed) {
    return typed
        .replaceAll("(?<=\\d),(?=\\d{3}\\b)", "")
        .replace("%", " percent ")
        .replace("°", " degrees ")
        .replaceAll("<=|≤", " at most ")
        .replaceAll(">=|≥", " at least ")
        .replace("<", " under ")
        .replace(">", " over ")
        .replaceAll("(?<=\\d)\\+(?=\\d)", " plus ")
        .replaceAll("(?<=\\d)/(?=\\d)", " out of ");
  }

  private void addPiece(String piece, List<String> words) {
    if (piece.isEmpty()) {
      return;
    }
    if (NUMERAL.matcher(piece).matches()) {
      words.addAll(spoken(piece));
    } else if (spellings.containsKey(piece)) {
      words.addAll(spellings.get(piece));
    } else if (piece.endsWith(OWNS) && spellings.containsKey(base(piece))) {
      List<String> base = new ArrayList<>(spellings.get(base(piece)));
      base.set(base.size() - 1, base.get(base.size() - 1) + OWNS);
      words.addAll(base);
    } else {
      words.add(ScotsNegation.plain(piece));
    }
  }

  private static String base(String piece) {
    return piece.substring(0, piece.length() - OWNS.length());
  }

  /** A numeral in words: {@code 3420} and {@code 34.5} as they are dictated. */
  public static List<String> spoken(String numeral) {
    String[] parts = numeral.split("\\.");
    List<String> words = new ArrayList<>();
    if (parts[0].length() > 4 || parts[0].length() > 1 && parts[0].startsWith("0")) {
      parts[0].chars().forEach(digit -> words.add(NumberWords.BELOW_TWENTY.get(digit - '0')));
    } else {
      words.addAll(whole(Integer.parseInt(parts[0])));
    }
    if (parts.length == 2) {
      words.add("point");
      parts[1].chars().forEach(digit -> words.add(NumberWords.BELOW_TWENTY.get(digit - '0')));
    }
    return words;
  }

  private static List<String> whole(int number) {
    List<String> words = new ArrayList<>();
    if (number >= 1000) {
      words.addAll(List.of(NumberWords.BELOW_TWENTY.get(number / 1000), "thousand"));
    }
    if (number % 1000 >= 100) {
      words.addAll(List.of(NumberWords.BELOW_TWENTY.get(number % 1000 / 100), "hundred"));
    }
    int rest = number % 100;
    if (rest >= 20) {
      words.add(NumberWords.TENS.get(rest / 10 - 2));
      rest %= 10;
    }
    if (rest > 0 || number == 0) {
      words.add(NumberWords.BELOW_TWENTY.get(rest));
    }
    return words;
  }
}
