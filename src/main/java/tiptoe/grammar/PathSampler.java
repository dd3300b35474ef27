package tiptoe.grammar;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Random;
import java.util.Set;
import tiptoe.grammar.Parse.Item;
import tiptoe.grammar.Parse.TagItem;
import tiptoe.grammar.Parse.WordItem;
import tiptoe.grammar.PhraseNetwork.Arc;
import tiptoe.grammar.PhraseNetwork.Path;

/** Draws phrases from a network. */
final class PathSampler {
  /** After this many arcs a walk takes the shortest way out, so that loops end. */
  private static final int PATIENCE = 60;

  private final PhraseNetwork network;
  private final Random random;

  /** First arc of a shortest way from each state to the end. */
  private final Arc[] wayOut;

  /** Last arc of a shortest way from the start to each state. */
  private final Arc[] wayIn;

  PathSampler(PhraseNetwork network, Random random) {
    this.network = network;
    this.random = random;
    this.wayIn = new Arc[network.stateCount()];
    this.wayOut = new Arc[network.stateCount()];
    if (network.end() >= 0) {
      findWays();
    }
  }

  private void findWays() {
    List<List<Arc>> incoming = new ArrayList<>();
    for (int state = 0; state < network.stateCount(); state++) {
      incoming.add(new ArrayList<>(1));
    }
    Deque<Integer> waiting = new ArrayDeque<>(List.of(PhraseNetwork.START));
    while (!waiting.isEmpty()) {
      for (Arc arc : network.arcsFrom(waiting.remove())) {
        incoming.get(arc.to()).add(arc);
        if (wayIn[arc.to()] == null && arc.to() != PhraseNetwork.START) {
          wayIn[arc.to()] = arc;
          waiting.add(arc.to());
        }
      }
    }
    waiting.add(network.end());
    while (!waiting.isEmpty()) {
      for (Arc arc : incoming.get(waiting.remove())) {
        if (wayOut[arc.from()] == null && arc.from() != network.end()) {
          wayOut[arc.from()] = arc;
          waiting.add(arc.from());
        }
      }
    }
  }

  List<Path> cover(int limit) {
    return walks(limit).stream().map(PathSampler::path).toList();
  }

  /** Walks from start to end that take every arc, or as many as the limit allows. */
  List<List<Arc>> walks(int limit) {
    List<Arc> arcs = new ArrayList<>();
    for (int state = 0; state < network.stateCount(); state++) {
      arcs.addAll(network.arcsFrom(state));
    }
    Collections.shuffle(arcs, random);
    Set<Arc> left = Collections.newSetFromMap(new IdentityHashMap<>());
    left.addAll(arcs);
    List<List<Arc>> walks = new ArrayList<>();
    for (Arc arc : arcs) {
      if (left.contains(arc) && walks.size() < limit) {
        List<Arc> walk = wayThrough(arc, left);
        walk.forEach(left::remove);
        walks.add(walk);
      }
    }
    return walks;
  }

  /** A phrase through one arc that then prefers arcs not walked yet. */
  private List<Arc> wayThrough(Arc wanted, Set<Arc> left) {
    List<Arc> walk = new ArrayList<>();
    for (int at = wanted.from(); at != PhraseNetwork.START; at = wayIn[at].from()) {
      walk.add(0, wayIn[at]);
    }
    walk.add(wanted);
    left.remove(wanted);
    for (int at = wanted.to(); at != network.end(); at = walk.get(walk.size() - 1).to()) {
      List<Arc> fresh =
          walk.size() < PATIENCE
              ? network.arcsFrom(at).stream().filter(left::contains).toList()
              : List.of();
      Arc next = fresh.isEmpty() ? wayOut[at] : fresh.get(random.nextInt(fresh.size()));
      left.remove(next);
      walk.add(next);
    }
    return walk;
  }

  Path sample() {
    if (network.end() < 0) {
      throw new IllegalStateException("expected a grammar with a phrase, found none");
    }
    List<Arc> walk = new ArrayList<>();
    for (int at = PhraseNetwork.START; at != network.end(); at = walk.get(walk.size() - 1).to()) {
      walk.add(walk.size() < PATIENCE ? draw(network.arcsFrom(at)) : wayOut[at]);
    }
    return path(walk);
  }

  private Arc draw(List<Arc> arcs) {
    double[] shares = arcs.stream().mapToDouble(arc -> Math.exp(-arc.cost())).toArray();
    double drawn = random.nextDouble() * Arrays.stream(shares).sum();
    for (int i = 0; i < shares.length - 1; i++) {
      drawn -= shares[i];
      if (drawn < 0) {
        return arcs.get(i);
      }
    }
    return arcs.get(arcs.size() - 1);
  }

  private static Path path(List<Arc> walk) {
    List<String> words = new ArrayList<>();
    List<Item> items = new ArrayList<>();
    for (Arc arc : walk) {
      if (arc.word() != null) {
        items.add(new WordItem(words.size()));
        words.add(arc.word());
      } else if (arc.tag() != null) {
        items.add(new TagItem(arc.tag(), words.size()));
      }
    }
    return new Path(words, items);
  }
}
