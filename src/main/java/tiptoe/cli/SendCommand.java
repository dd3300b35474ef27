package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.RecordProblem;
import tiptoe.report.send.Credentials;
import tiptoe.report.send.Destination;
import tiptoe.report.send.Outbox;
import tiptoe.report.send.Sender;

/** Sends records to a FHIR server; the only command that opens a connection. */
@Command(
    name = "send",
    description = {
      "Sends records as FHIR R4 documents to a server you name.",
      "What is left in the outbox from an earlier try goes first. An encrypted record is not kept"
          + " in the outbox: when it could not be sent, send it again.",
      "Only over https, unless the server is this machine. Unsigned records only with --draft."
    },
    footer = {
      "",
      "Example: tiptoe send 2026-03-01-0900-k3f9 --to https://fhir.example.org/r4",
      "                     --token-file ~/fhir-token",
      "         tiptoe send --waiting"
    })
final class SendCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECORD", arity = "0..*", description = "Examinations.")
  private List<String> names = List.of();

  @Option(names = "--to", paramLabel = "URL", description = "The server's base; needed to send.")
  private String to;

  @Option(names = "--draft", description = "Send records that nobody has signed, too.")
  private boolean draft;

  @Option(
      names = "--token-file",
      paramLabel = "FILE",
      description = "Log in with the bearer token in the first line of a file.")
  private Path token;

  @Option(
      names = "--certificate-file",
      paramLabel = "FILE",
      description = "Log in with a client certificate and its key, PKCS #12.")
  private Path certificate;

  @Option(
      names = "--certificate-password-file",
      paramLabel = "FILE",
      description = "Read the password of the certificate from the first line of a file.")
  private Path certificatePassword;

  @Option(
      names = "--authority-file",
      paramLabel = "FILE",
      description = "Trust the server by these certificates (PEM), not by the platform's.")
  private Path authority;

  @Option(names = "--waiting", description = "List what waits in the outbox; sends nothing.")
  private boolean waiting;

  @Option(names = "--clear", description = "Remove what waits in the outbox; sends nothing.")
  private boolean clear;

  @Mixin private RecordOptions options;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Outbox outbox = new Outbox(options.place().resolve("outbox"));
    if (waiting || clear) {
      WrongUse.unless(
          names.isEmpty() && to == null && !(waiting && clear),
          "expected --waiting or --clear alone, found more");
      if (waiting) {
        return list(outbox);
      }
      Console.out().println("removed from the outbox: " + outbox.clear());
      return 0;
    }
    WrongUse.unless(to != null, "expected --to URL, found none");
    String server = Destination.parse(to).base().toString();
    Credentials credentials = Credentials.read(token, certificate, certificatePassword, authority);
    List<Outbox.Letter> passing = new ArrayList<>();
    for (String name : names) {
      ExamRecord record = options.read(name).record();
      if (!record.signed() && !draft) {
        throw new RecordProblem(
            "expected a signed record, found a draft: " + name + "; --draft sends it");
      }
      Outbox.Letter letter = Outbox.Letter.of(options.wording(record), server);
      if (options.store().isEncrypted(options.store().find(name))) {
        passing.add(letter); // the outbox is not encrypted, the record is and stays
      } else {
        outbox.put(letter);
      }
    }
    Outbox.Contents contents = outbox.contents();
    contents.problems().forEach(Console.err()::println);
    List<Outbox.Letter> letters = new ArrayList<>(contents.letters());
    letters.removeIf(letter -> !letter.to().equals(server));
    letters.addAll(passing);
    boolean sent =
        Sender.patient(outbox, credentials).sendAll(letters, Console.out(), Console.err());
    return sent && contents.problems().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }

  private static int list(Outbox outbox) throws IOException {
    Outbox.Contents contents = outbox.contents();
    contents.letters().forEach(letter -> Console.out().println(outbox.row(letter)));
    contents.problems().forEach(Console.err()::println);
    if (contents.letters().isEmpty()) {
      Console.err().println("nothing waits to be sent");
    }
    return contents.problems().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }
}
