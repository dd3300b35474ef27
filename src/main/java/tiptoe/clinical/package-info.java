/**
 * What follows from the findings: size at birth, screening results, flags, dates to keep. It
 * documents and reminds, it does not diagnose. Every figure names its source.
 */
package tiptoe.clinical;
