package tiptoe.clinical;

import tiptoe.protocol.Identified;

/** Classes of birth weight (WHO, ICD-10 P07). */
public enum BirthWeightClass implements Identified {
  EXTREMELY_LOW,
  VERY_LOW,
  LOW,
  NOT_LOW;

  static final String SOURCE = "WHO, ICD-10 P07";

  /** The class of a birth weight in g. */
  static BirthWeightClass of(double grams) {
    return grams < 1000 ? EXTREMELY_LOW : grams < 1500 ? VERY_LOW : grams < 2500 ? LOW : NOT_LOW;
  }

  /** The same for people: {@code very low}. */
  public String text() {
    return id().replace('-', ' ');
  }
}
