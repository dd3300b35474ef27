package tiptoe.audio;

import java.io.IOException;

/** Sound that comes from another source and is looked at or changed on its way. */
public abstract class PassedSound implements SampleSource {
  protected final SampleSource source;

  protected PassedSound(SampleSource source) {
    this.source = source;
  }

  @Override
  public void end() {
    source.end();
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
