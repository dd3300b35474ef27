/**
 * The examination as data: regions from head to toe, their steps, the values a step can take.
 * Loaded from {@code protocol.yaml}; known to every stage, knows none.
 */
package tiptoe.protocol;
