package tiptoe.cli;

import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Option;
import tiptoe.exam.journal.RecordStore;
import tiptoe.files.UserFolders;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/** The option that names another place for records. */
class DataOption {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Where records are kept; else the usual place for a user's data.")
  private Path folder;

  RecordStore store() {
    return store(Protocol.standard());
  }

  /** The same, where new ones go by this protocol. */
  RecordStore store(Protocol protocol) {
    return new RecordStore(place(), protocol, Clock.systemDefaultZone(), QuestionWording::of);
  }

  Path place() {
    return folder == null ? UserFolders.here().data() : folder.toAbsolutePath();
  }
}
