package tiptoe.clinical;

/** Something that may hold of a case. */
@FunctionalInterface
interface Condition {
  ConditionResult of(AssessedBaby baby);
}
