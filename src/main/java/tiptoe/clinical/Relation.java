package tiptoe.clinical;

import tiptoe.finding.Bound;
import tiptoe.finding.Quantity;

/** How two numbers stand to each other. */
enum Relation {
  LESS("<"),
  AT_MOST("<="),
  EQUAL("="),
  AT_LEAST(">="),
  MORE(">");

  private final String sign;

  Relation(String sign) {
    this.sign = sign;
  }

  static Relation of(String sign) {
    for (Relation relation : values()) {
      if (relation.sign.equals(sign)) {
        return relation;
      }
    }
    throw new IllegalArgumentException("expected < <= = >= or >, found " + sign);
  }

  /**
   * Whether it holds for a number that may be a bound: of "under two" the largest it can be counts,
   * since high is what is feared of all that is told so, of "over three" what is certain.
   */
  boolean holds(Quantity left, double right) {
    double number = left.number();
    boolean under = left.comparator() == Bound.UNDER;
    if (under || left.comparator() == Bound.OVER) {
      return switch (this) {
        case LESS, AT_MOST -> under ? number <= right : number < right;
        case EQUAL -> false;
        case AT_LEAST, MORE -> under ? number > right : number >= right;
      };
    }
    return holds(number, right);
  }

  boolean holds(double left, double right) {
    return switch (this) {
      case LESS -> left < right;
      case AT_MOST -> left <= right;
      case EQUAL -> left == right;
      case AT_LEAST -> left >= right;
      case MORE -> left > right;
    };
  }
}
