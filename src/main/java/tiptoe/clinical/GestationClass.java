package tiptoe.clinical;

import tiptoe.protocol.Gestation;
import tiptoe.protocol.Identified;

/** Classes of gestation (ACOG Committee Opinion 579, 2013, for term; late preterm 34+0 to 36+6). */
public enum GestationClass implements Identified {
  PRETERM(20),
  LATE_PRETERM(34),
  EARLY_TERM(37),
  FULL_TERM(39),
  LATE_TERM(41),
  POST_TERM(42);

  static final String SOURCE = "ACOG Committee Opinion 579, 2013";

  private final int fromWeek;

  GestationClass(int fromWeek) {
    this.fromWeek = fromWeek;
  }

  static GestationClass of(Gestation gestation) {
    GestationClass found = PRETERM;
    for (GestationClass next : values()) {
      if (gestation.weeks() >= next.fromWeek) {
        found = next;
      }
    }
    return found;
  }

  /** The first completed week of the class. */
  int fromWeek() {
    return fromWeek;
  }

  /** The same for people: {@code late preterm}, {@code post-term}. */
  public String text() {
    return this == POST_TERM ? "post-term" : id().replace('-', ' ');
  }
}
