package tiptoe.measure;

import java.io.IOException;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;

/** The sound that a task is heard in. */
public final class TaskSound {
  private TaskSound() {}

  /** The recording, with its noise where the condition asks for some. */
  public static Pcm of(MeasureRun.Task task, Noises noises) throws IOException {
    Pcm speech = AudioFile.read(task.file());
    Double snr = task.condition().snrDb();
    String name = task.file().getFileName().toString();
    return snr == null ? speech : noises.mix(speech, name, task.place(), snr);
  }
}
