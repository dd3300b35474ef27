/** The commands; the only place that wires the stages together. */
package tiptoe.cli;
