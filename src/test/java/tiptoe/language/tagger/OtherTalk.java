package tiptoe.language.tagger;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import tiptoe.language.SecondReading;

/** Reads as another does, but for how much a sentence sounds like talk. */
record OtherTalk(SecondReading reading, ToDoubleFunction<List<String>> chance)
    implements SecondReading {
  @Override
  public double talk(List<String> words) {
    return chance.applyAsDouble(words);
  }

  @Override
  public Reading read(List<String> words) {
    return reading.read(words);
  }

  @Override
  public Parted parted(List<String> words) {
    return reading.parted(words);
  }

  @Override
  public Told told(List<String> words) {
    return reading.told(words);
  }

  @Override
  public Optional<LeftOut> leftOut(List<String> words) {
    return reading.leftOut(words);
  }

  @Override
  public List<String> headed(List<String> words) {
    return reading.headed(words);
  }

  @Override
  public Set<Integer> asides(List<String> words) {
    return reading.asides(words);
  }
}
