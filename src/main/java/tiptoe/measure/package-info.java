/**
 * How well the tool hears: recordings with what is said in them, through the same stages as an
 * examination, and counted. Also how often reviewers found it right.
 */
package tiptoe.measure;
