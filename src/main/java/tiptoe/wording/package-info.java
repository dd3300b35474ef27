/** The one place that puts findings, flags, sizes, questions and problems into words for people. */
package tiptoe.wording;
