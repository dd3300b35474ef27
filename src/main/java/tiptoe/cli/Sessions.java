package tiptoe.cli;

import java.time.Clock;
import java.util.UUID;
import tiptoe.exam.Event;
import tiptoe.exam.Examination;
import tiptoe.exam.MemorySink;
import tiptoe.protocol.Protocol;

/** Opens sessions. */
final class Sessions {
  private Sessions() {}

  /** A session that is kept in memory only. */
  static Session inMemory(Understanding understanding) {
    Event.ExaminationOpened opening =
        new Event.ExaminationOpened(
            UUID.randomUUID().toString(), null, "1", Tiptoe.Version.number(), null);
    Examination examination =
        Examination.open(Protocol.standard(), Clock.systemUTC(), new MemorySink(), opening);
    return new Session(understanding.interpreter(), examination);
  }
}
