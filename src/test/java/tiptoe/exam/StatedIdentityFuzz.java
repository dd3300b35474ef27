package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import tiptoe.protocol.Protocol;

/** Whatever a file or a code holds, each fact that is read is one, or what is wrong is said. */
class StatedIdentityFuzz {
  private static final Protocol PROTOCOL = Protocol.standard();

  @FuzzTest
  void anyTextIsReadOrRefused(byte[] bytes) {
    StatedIdentity stated =
        StatedIdentity.parse(new String(bytes, StandardCharsets.UTF_8), PROTOCOL);
    assertEquals(stated.facts().isEmpty(), !stated.problems().isEmpty());
    stated
        .facts()
        .forEach((fact, value) -> assertEquals(Optional.empty(), PROTOCOL.problem(fact, value)));
  }
}
