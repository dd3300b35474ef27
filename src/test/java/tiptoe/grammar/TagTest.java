package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TagTest {
  @Test
  void holdsSeveralPairs() {
    assertEquals(
        List.of(new Tag("step", "clavicle"), new Tag("value", "step-off"), new Tag("n", "3.5")),
        Tag.parse("step=clavicle  value=step-off n=3.5"));
  }

  @Test
  void endsAClause() {
    assertEquals(List.of(Tag.CLAUSE_END), Tag.parse(" ; "));
    assertTrue(Tag.parse("a=b ;").get(1).endsClause());
  }

  @Test
  void readsWhatItWrites() {
    for (Tag tag : List.of(new Tag("a", "b"), Tag.CLAUSE_END)) {
      assertEquals(List.of(tag), Tag.parse(tag.toString()));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"value", "=b", "a=", "A=b", "a=b=c", "a=b;", ";;", "1=b", ""})
  void findsMalformedPairs(String text) {
    assertEquals(Optional.of(text), Tag.firstMalformed(text));
    var refused = assertThrows(IllegalArgumentException.class, () -> Tag.parse(text));
    assertEquals("expected key=value or ';', found '" + text + "'", refused.getMessage());
  }
}
