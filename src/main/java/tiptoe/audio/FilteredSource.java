package tiptoe.audio;

import java.io.IOException;
import java.util.Optional;

/** A source whose chunks pass through a filter. */
record FilteredSource(SampleSource source, SampleFilter filter) implements SampleSource {
  @Override
  public Optional<Chunk> next() throws IOException {
    return source
        .next()
        .map(chunk -> new Chunk(chunk.position(), chunk.lost(), filter.apply(chunk.samples())));
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
