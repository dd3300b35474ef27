package tiptoe.cli;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** Says what a call lacks or what a value should be, in words of ours and not of the library. */
final class WrongValue {
  private WrongValue() {}

  /** What a reader of ours found wrong with a value, in words of its own. */
  static final class Told extends TypeConversionException {
    Told(String message) {
      super(message);
    }
  }

  static String of(ParameterException wrong) {
    if (wrong instanceof MissingParameterException missing) {
      return missing.getMissing().stream()
          .map(WrongValue::expected)
          .collect(Collectors.joining(", "));
    }
    ArgSpec about = wrong.getArgSpec();
    if (about == null || wrong.getValue() == null) {
      return wrong.getMessage();
    }
    Throwable why = wrong.getCause();
    boolean unread = why instanceof TypeConversionException && !(why instanceof Told);
    Optional<String> choices = choices(about);
    return choices.isEmpty() && !unread
        ? wrong.getMessage()
        : choices.map(any -> "expected " + any + behind(about)).orElseGet(() -> expected(about))
            + ", found '%s'".formatted(wrong.getValue());
  }

  private static String expected(ArgSpec about) {
    boolean bare = about.typeInfo().isBoolean();
    return "expected " + (bare ? "nothing" : about.paramLabel()) + behind(about);
  }

  private static String behind(ArgSpec about) {
    return about instanceof OptionSpec option ? " behind " + option.longestName() : "";
  }

  /** What can be chosen of, as it is typed. */
  private static Optional<String> choices(ArgSpec about) {
    return Arrays.stream(about.auxiliaryTypes())
        .filter(Class::isEnum)
        .findFirst()
        .map(
            of ->
                Arrays.stream(of.getEnumConstants())
                    .map(one -> one.toString().toLowerCase(Locale.ROOT).replace('_', '-'))
                    .collect(Collectors.joining(", ")));
  }
}
