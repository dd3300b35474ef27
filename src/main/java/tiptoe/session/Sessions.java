package tiptoe.session;

import java.time.Clock;
import java.time.ZonedDateTime;
import java.util.UUID;
import tiptoe.exam.Event;
import tiptoe.exam.Examination;
import tiptoe.exam.journal.MemorySink;
import tiptoe.protocol.LocalProtocol;
import tiptoe.settings.Settings;
import tiptoe.wording.QuestionWording;

/** Opens sessions. */
public final class Sessions {
  private Sessions() {}

  /** A session that is kept in memory only. */
  public static ExamSession inMemory(Understanding understanding) {
    return inMemory(understanding, Settings.DEFAULT);
  }

  /** The same, judged by these settings. */
  public static ExamSession inMemory(Understanding understanding, Settings settings) {
    Event.ExaminationOpened opening =
        new Event.ExaminationOpened(
            UUID.randomUUID().toString(),
            null,
            "1",
            ToolVersion.number(),
            null,
            local(understanding));
    Clock clock = Clock.systemDefaultZone();
    Examination examination =
        Examination.open(
            understanding.protocol(), clock, new MemorySink(), QuestionWording::of, opening);
    return new ExamSession(
        understanding::interpreter, examination, settings, ZonedDateTime.now(clock));
  }

  private static String local(Understanding understanding) {
    return understanding.protocol().local().map(LocalProtocol::text).orElse(null);
  }
}
