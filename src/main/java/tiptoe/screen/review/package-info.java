/**
 * The review of a record: what there is to decide, to read and to correct, and its signature. What
 * an edit does is decided in {@link tiptoe.exam.Review}; here it is asked for and shown.
 */
package tiptoe.screen.review;
