package tiptoe.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Puts what is the same on both sides together: it is told, and picked, as one. */
public final class BothSides {
  private BothSides() {}

  /**
   * Each thing alone, or before the one that says the same of the other side, in their order.
   *
   * @param said the finding of a thing; empty where it has none
   */
  public static <T> List<List<T>> together(List<T> things, Function<T, Optional<Finding>> said) {
    List<List<T>> places = new ArrayList<>();
    for (T thing : things) {
      Optional<Finding> found = said.apply(thing);
      Optional<List<T>> across =
          found.flatMap(
              one ->
                  places.stream()
                      .filter(place -> place.size() == 1)
                      .filter(place -> said.apply(place.get(0)).filter(one::isAcross).isPresent())
                      .findFirst());
      across.ifPresentOrElse(
          place -> places.set(places.indexOf(place), List.of(place.get(0), thing)),
          () -> places.add(List.of(thing)));
    }
    return places;
  }
}
