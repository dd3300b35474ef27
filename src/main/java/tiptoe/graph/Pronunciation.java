package tiptoe.graph;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One way to say a word.
 *
 * @param phones the phones in order, at least one, without stress
 */
public record Pronunciation(List<Phone> phones) {
  public Pronunciation {
    phones = List.copyOf(phones);
    if (phones.isEmpty()) {
      throw new IllegalArgumentException("expected at least one phone, found none");
    }
  }

  /** This pronunciation followed by another. */
  Pronunciation then(Pronunciation other) {
    List<Phone> all = new ArrayList<>(phones);
    all.addAll(other.phones);
    return new Pronunciation(all);
  }

  /** The model's phone numbers, each phone in its variant for its place in the word. */
  int[] ids() {
    int[] ids = new int[phones.size()];
    for (int i = 0; i < ids.length; i++) {
      ids[i] = phones.get(i).at(placeOf(i, ids.length));
    }
    return ids;
  }

  private static Phone.Place placeOf(int index, int length) {
    if (length == 1) {
      return Phone.Place.SINGLE;
    }
    if (index == 0) {
      return Phone.Place.BEGIN;
    }
    return index == length - 1 ? Phone.Place.END : Phone.Place.INSIDE;
  }

  @Override
  public String toString() {
    return phones.stream().map(Phone::name).collect(Collectors.joining(" "));
  }
}
