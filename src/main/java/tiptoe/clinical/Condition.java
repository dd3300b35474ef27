package tiptoe.clinical;

/** Something that may hold of a case. */
@FunctionalInterface
interface Condition {
  Verdict of(Case subject);
}
