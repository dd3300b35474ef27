package tiptoe.clinical;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;

/** Whatever a file of answers holds, it is judged, or what is wrong with it is said. */
class AnswersFileFuzz {
  private static final Protocol PROTOCOL = Protocol.standard();
  private static final Assessor ASSESSOR = Assessor.of(Protocol.standard());
  private static final ZonedDateTime NOON = ZonedDateTime.parse("2026-11-25T12:00:00Z");

  @FuzzTest
  void anyTextIsJudgedOrRefused(byte[] bytes) {
    AnswersFile file =
        AnswersFile.parse(new String(bytes, StandardCharsets.UTF_8), PROTOCOL, ZoneOffset.UTC);
    if (file.problems().isEmpty()) {
      ZonedDateTime at = file.examinedAt() == null ? NOON : file.examinedAt();
      ASSESSOR.assess(file.baby(), file.answers(), Settings.DEFAULT, at);
    }
  }
}
