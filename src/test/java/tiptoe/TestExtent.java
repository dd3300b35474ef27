package tiptoe;

import java.util.List;
import java.util.stream.IntStream;

/**
 * How much of a long test is run: a fixed sample, as {@code mvn verify} does, or much more, as
 * {@code mvn -Pfull verify} does. Every check is in both but those that are {@link FullOnly}; only
 * the number of cases differs.
 */
public final class TestExtent {
  private static final boolean FULL = "full".equals(System.getProperty("tiptoe.tests"));

  private TestExtent() {}

  /** Whether everything is run. */
  public static boolean isFull() {
    return FULL;
  }

  /** The first number when a sample is run, the second when everything is. */
  public static int of(int sample, int full) {
    return FULL ? full : sample;
  }

  /** Every so many-th of a list when a sample is run, all of it when everything is. */
  public static <T> List<T> some(List<T> all, int every) {
    return some(all, every, 1);
  }

  /** Every so many-th of a list when a sample is run, every so many-th when everything is. */
  public static <T> List<T> some(List<T> all, int sample, int full) {
    int every = of(sample, full);
    return IntStream.range(0, all.size()).filter(i -> i % every == 0).mapToObj(all::get).toList();
  }
}
