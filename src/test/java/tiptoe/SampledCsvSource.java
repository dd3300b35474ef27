package tiptoe;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.ArgumentsProvider;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.support.AnnotationConsumer;
import org.junit.jupiter.params.support.ParameterDeclarations;

/**
 * Rows of cells between commas, as of {@code CsvSource} but without quotes: every so many-th in a
 * sample, beginning with the first, and all in the full run.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ArgumentsSource(SampledCsvSource.Rows.class)
public @interface SampledCsvSource {
  String[] value();

  int every() default 6;

  /** Chooses the rows. */
  final class Rows implements ArgumentsProvider, AnnotationConsumer<SampledCsvSource> {
    private List<String> rows = List.of();

    @Override
    public void accept(SampledCsvSource source) {
      rows = TestExtent.some(List.of(source.value()), source.every());
    }

    @Override
    public Stream<Arguments> provideArguments(
        ParameterDeclarations parameters, ExtensionContext context) {
      return rows.stream().map(row -> Arguments.of((Object[]) row.split(", ")));
    }
  }
}
