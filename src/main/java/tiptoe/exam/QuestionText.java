package tiptoe.exam;

/** Puts a question into words where it is asked; the record keeps the words as they were then. */
@FunctionalInterface
public interface QuestionText {
  /**
   * @param asked the question, without its words
   * @param record as it is when the question comes up
   */
  String of(Event.QuestionAsked asked, ExamRecord record);
}
