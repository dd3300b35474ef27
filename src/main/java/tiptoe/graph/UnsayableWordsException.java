package tiptoe.graph;

import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.grammar.Problem;

/** The pronunciation file is wrong, or words of the grammars have no pronunciation. */
public final class UnsayableWordsException extends IOException {
  private static final long serialVersionUID = 1L;

  private final transient List<MissingWord> missing;

  UnsayableWordsException(List<Problem> problems, List<MissingWord> missing) {
    super(
        Stream.concat(problems.stream(), missing.stream())
            .map(Object::toString)
            .collect(Collectors.joining("\n")));
    this.missing = List.copyOf(missing);
  }

  /** Words that neither the pronunciation file nor the model's lexicon has. */
  public List<MissingWord> missing() {
    return missing;
  }
}
