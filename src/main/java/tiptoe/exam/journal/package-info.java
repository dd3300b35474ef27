/** The record on disk: a folder for every examination, with a journal that only grows. */
package tiptoe.exam.journal;
