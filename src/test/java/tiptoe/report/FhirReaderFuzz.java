package tiptoe.report;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import tiptoe.protocol.Protocol;
import tiptoe.report.fhir.FhirReader;

/** Whatever a FHIR document holds, its answers are read, or it is refused with a message. */
class FhirReaderFuzz {
  private static final FhirReader READER = new FhirReader(Protocol.standard());

  @FuzzTest
  void anyTextIsReadOrRefused(byte[] bytes) {
    try {
      READER.contents(new String(bytes, StandardCharsets.UTF_8));
    } catch (IllegalArgumentException e) {
      if (e.getMessage() == null || e.getMessage().isBlank()) {
        throw new AssertionError("expected a message", e);
      }
    }
  }
}
