package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Status;
import tiptoe.wording.FindingWording;

/** What an edit did to the record, in words. */
record ChangeWords(ExamRecord record) {
  String of(Changes changes) {
    FindingWording phrasing = new FindingWording(record.protocol());
    List<String> parts = new ArrayList<>();
    for (RecordedFinding said : changes.statements()) {
      String what = phrasing.of(said.statement());
      switch (said.status()) {
        case STANDS -> parts.add("recorded " + what + replaced(said, phrasing));
        case CONFIRMS -> parts.add("recorded already: " + what);
        default -> {}
      }
    }
    changes
        .of(Event.ContextStated.class)
        .forEach(fact -> parts.add("noted " + fact.fact() + ": " + fact.value()));
    return parts.isEmpty() ? "noted" : String.join("; ", parts);
  }

  private String replaced(RecordedFinding said, FindingWording phrasing) {
    String old =
        said.of().stream()
            .flatMap(number -> record.statement(number).stream())
            .filter(one -> one.status() == Status.REPLACED)
            .map(one -> phrasing.of(one.statement()))
            .distinct()
            .collect(Collectors.joining(", "));
    return old.isEmpty() ? "" : ", in place of " + old;
  }
}
