package tiptoe.finding;

import tiptoe.protocol.Identified;
import tiptoe.protocol.Labels;

/** What the clinician can tell the tool to do, hands free. */
public enum Command implements Identified {
  PAUSE,
  RESUME,
  SAY_MISSING,
  READ_BACK,
  SAY_AGAIN,
  SAY_UNSURE,
  NEXT_REGION,
  PREVIOUS_REGION,
  END_EXAM,
  START_REMARK,
  END_REMARK,
  STRIKE,
  SHOW_HELP,
  YES,
  NO;

  public static Command of(String id) {
    return Labels.byId(Command.class, id, "a command");
  }
}
