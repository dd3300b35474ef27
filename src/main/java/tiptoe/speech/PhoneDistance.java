package tiptoe.speech;

import java.util.List;
import java.util.Set;
import tiptoe.graph.Phone;

/**
 * How far apart two strings of phones are: the least cost of edits (Levenshtein 1965), for each
 * phone of the longer one. Vowels are near each other, so are consonants that differ in voice
 * alone.
 */
final class PhoneDistance {
  private static final double OTHER = 1;
  private static final double NEAR = 0.5;
  private static final Set<String> WEAK = Set.of("AH", "IH", "ER", "Y", "HH");
  private static final Set<String> PAIRS =
      Set.of("BP", "DT", "GK", "SZ", "FV", "DHTH", "CHJH", "SHZH", "MN", "NNG", "LR");
  private static final String VOWELS = "AEIOU";

  private PhoneDistance() {}

  /** 0 where they are the same, 1 where nothing agrees. */
  static double between(List<Phone> one, List<Phone> other) {
    int longest = Math.max(one.size(), other.size());
    if (longest == 0 || longest > 2 * Math.min(one.size(), other.size())) {
      return 1;
    }
    double[] before = new double[other.size() + 1];
    for (int j = 1; j <= other.size(); j++) {
      before[j] = before[j - 1] + alone(other.get(j - 1));
    }
    for (Phone phone : one) {
      double[] now = new double[other.size() + 1];
      now[0] = before[0] + alone(phone);
      for (int j = 1; j <= other.size(); j++) {
        double put = Math.min(now[j - 1] + alone(other.get(j - 1)), before[j] + alone(phone));
        now[j] = Math.min(put, before[j - 1] + changed(phone, other.get(j - 1)));
      }
      before = now;
    }
    return before[other.size()] / longest;
  }

  private static double alone(Phone phone) {
    return WEAK.contains(phone.name()) ? NEAR : OTHER;
  }

  private static double changed(Phone one, Phone other) {
    if (one == other) {
      return 0;
    }
    boolean vowels = isVowel(one) && isVowel(other);
    boolean pair =
        PAIRS.contains(one.name() + other.name()) || PAIRS.contains(other.name() + one.name());
    return vowels || pair ? NEAR : OTHER;
  }

  private static boolean isVowel(Phone phone) {
    return VOWELS.indexOf(phone.name().charAt(0)) >= 0;
  }
}
