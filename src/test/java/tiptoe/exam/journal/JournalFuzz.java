package tiptoe.exam.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import tiptoe.exam.ExamRecord;
import tiptoe.files.Sha256;
import tiptoe.protocol.Protocol;

/** Whatever a journal holds, it is read, its breaks are named, and what is left folds. */
class JournalFuzz {
  private static final Protocol PROTOCOL = Protocol.standard();

  @FuzzTest
  void anyBytesAreReadOrNamed(byte[] bytes) {
    read(bytes);
  }

  /** The same with right checksums, which chance would not find, so that events are read too. */
  @FuzzTest
  void anyEventsWithRightSumsFold(byte[] bytes) {
    ByteArrayOutputStream journal = new ByteArrayOutputStream();
    for (String line : new String(bytes, StandardCharsets.ISO_8859_1).split("\n")) {
      String body = line.endsWith("}") ? line.substring(0, line.length() - 1) : line;
      byte[] start = body.getBytes(StandardCharsets.ISO_8859_1);
      String sum = Sha256.hexOf(start).substring(0, 16);
      journal.writeBytes(start);
      journal.writeBytes((",\"sum\":\"" + sum + "\"}\n").getBytes(StandardCharsets.US_ASCII));
    }
    read(journal.toByteArray());
  }

  private static void read(byte[] bytes) {
    try {
      JournalReading reading = JournalReader.read(bytes, null);
      reading.breaks().forEach(Object::toString);
      ExamRecord.fold(PROTOCOL, reading.entries()).answers();
    } catch (RecordProblem e) {
      if (e.getMessage().isBlank()) {
        throw new AssertionError(e);
      }
    }
  }
}
