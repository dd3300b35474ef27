package tiptoe.clinical;

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
