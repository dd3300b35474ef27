package tiptoe.graph;

import java.util.Locale;
import java.util.Optional;

/**
 * The 39 phones of ARPABET as the CMU Pronouncing Dictionary uses them, in alphabetical order: the
 * order in which the model numbers them.
 */
public enum Phone {
  AA,
  AE,
  AH,
  AO,
  AW,
  AY,
  B,
  CH,
  D,
  DH,
  EH,
  ER,
  EY,
  F,
  G,
  HH,
  IH,
  IY,
  JH,
  K,
  L,
  M,
  N,
  NG,
  OW,
  OY,
  P,
  R,
  S,
  SH,
  T,
  TH,
  UH,
  UW,
  V,
  W,
  Y,
  Z,
  ZH;

  /** Place of a phone in its word; the model has a variant of each phone for each place. */
  public enum Place {
    BEGIN,
    END,
    INSIDE,
    SINGLE
  }

  /** The silence phone that stands alone between words. */
  public static final int SILENCE = 1;

  private static final int FIRST = 11;

  /** Number of the last phone of the model. */
  static final int LAST = FIRST + 39 * 4 - 1;

  /** The model's number of this phone at a place of a word, 11–166. */
  public int at(Place place) {
    return FIRST + ordinal() * Place.values().length + place.ordinal();
  }

  /** The phone with a number of the model, or empty for silence and noise. */
  static Optional<Phone> of(int id) {
    return id < FIRST || id > LAST
        ? Optional.empty()
        : Optional.of(values()[(id - FIRST) / Place.values().length]);
  }

  /** Reads a name; a stress mark behind a vowel ({@code AH0}) is let pass. */
  static Optional<Phone> parse(String name) {
    String bare = name.toUpperCase(Locale.ROOT).replaceFirst("(?<=[A-Z]{2})[012]$", "");
    for (Phone phone : values()) {
      if (phone.name().equals(bare)) {
        return Optional.of(phone);
      }
    }
    return Optional.empty();
  }
}
