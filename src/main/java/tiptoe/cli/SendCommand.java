package tiptoe.cli;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.ExamRecord;
import tiptoe.report.fhir.FhirDocument;
import tiptoe.report.send.Destination;
import tiptoe.report.send.Outbox;
import tiptoe.report.send.Sender;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.RecordWording;

/** Sends records to a FHIR server; the only command that opens a connection. */
@Command(
    name = "send",
    mixinStandardHelpOptions = true,
    description = {
      "Sends records as FHIR R4 documents to a server you name.",
      "What is left in the outbox from an earlier try goes first.",
      "Only over https, unless the server is this machine. Unsigned records only with --draft."
    },
    footer = {"", "Example: tiptoe send 2026-03-01-0900-k3f9 --to https://fhir.example.org/r4"})
final class SendCommand implements Callable<Integer> {
  private static final int TRIES = 5;
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  @Parameters(paramLabel = "RECORD", arity = "0..*", description = "Examinations.")
  private List<String> names = List.of();

  @Option(names = "--to", paramLabel = "URL", required = true, description = "The server's base.")
  private String to;

  @Option(names = "--draft", description = "Send records that nobody has signed, too.")
  private boolean draft;

  @Mixin private RecordOptions options;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Outbox outbox = new Outbox(options.place().resolve("outbox"));
    String server = Destination.parse(to).base().toString();
    for (String name : names) {
      ExamRecord record = options.read(name).record();
      if (!record.signed() && !draft) {
        Console.err()
            .println("expected a signed record, found a draft: " + name + "; --draft sends it");
        return Tiptoe.COULD_NOT;
      }
      outbox.put(letter(record, server));
    }
    return send(outbox, server);
  }

  private Outbox.Letter letter(ExamRecord record, String server) throws IOException {
    RecordWording wording = options.wording(record);
    String identifier = FhirDocument.bundle(wording).getIdentifier().getValue();
    return new Outbox.Letter(identifier, server, FhirDocument.json(wording));
  }

  private static int send(Outbox outbox, String server) throws IOException, InterruptedException {
    Sender sender = new Sender(outbox, TRIES, PATIENCE, pause -> Thread.sleep(pause.toMillis()));
    int failed = 0;
    for (Outbox.Letter letter : outbox.waiting()) {
      if (letter.to().equals(server)) {
        try {
          sender.send(letter);
          Console.out().println("sent " + letter.identifier());
        } catch (IOException e) {
          Console.err().println(letter.identifier() + ": " + ProblemWording.of(e));
          failed++;
        }
      }
    }
    return failed == 0 ? 0 : Tiptoe.COULD_NOT;
  }
}
