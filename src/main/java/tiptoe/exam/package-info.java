/** The record: what happened, in order, and the answers it folds to. */
package tiptoe.exam;
