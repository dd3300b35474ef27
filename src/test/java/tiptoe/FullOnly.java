package tiptoe;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.platform.commons.support.AnnotationSupport;

/**
 * A slow test that a sample leaves out, since another takes the same way through the program; it is
 * counted among those that were skipped.
 */
@Target({ElementType.METHOD, ElementType.TYPE})
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(FullOnly.Condition.class)
public @interface FullOnly {
  /** What is run of it in a sample. */
  String value();

  /** Skips it in a sample. */
  final class Condition implements ExecutionCondition {
    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
      return TestExtent.isFull()
          ? ConditionEvaluationResult.enabled("everything is run")
          : AnnotationSupport.findAnnotation(context.getElement(), FullOnly.class)
              .map(only -> ConditionEvaluationResult.disabled("run by -Pfull: " + only.value()))
              .orElseGet(() -> ConditionEvaluationResult.enabled("is in the sample"));
    }
  }
}
