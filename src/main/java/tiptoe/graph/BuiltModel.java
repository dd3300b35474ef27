package tiptoe.graph;

import java.nio.file.Path;

/**
 * A model folder with a decoding graph of our own, ready for the recogniser.
 *
 * @param folder the folder
 * @param states number of states of the graph
 * @param arcs number of arcs of the graph
 * @param fresh whether it was built now rather than found
 */
public record BuiltModel(Path folder, long states, long arcs, boolean fresh) {}
