package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tiptoe.exam.ExamRecord;
import tiptoe.report.fhir.FhirDocument;
import tiptoe.report.send.Credentials;
import tiptoe.report.send.Destination;
import tiptoe.report.send.Outbox;
import tiptoe.report.send.Sender;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.RecordWording;

/** Sends records to a FHIR server; the only command that opens a connection. */
@Command(
    name = "send",
    mixinStandardHelpOptions = true,
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
  private static final int TRIES = 5;
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

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
  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Outbox outbox = new Outbox(options.place().resolve("outbox"));
    if (waiting || clear) {
      if (!names.isEmpty() || to != null || waiting && clear) {
        throw new ParameterException(
            spec.commandLine(), "expected --waiting or --clear alone, found more");
      }
      return waiting ? list(outbox) : clear(outbox);
    }
    if (to == null) {
      throw new ParameterException(spec.commandLine(), "expected --to URL, found none");
    }
    String server = Destination.parse(to).base().toString();
    Credentials credentials = Credentials.read(token, certificate, certificatePassword, authority);
    List<Outbox.Letter> passing = new ArrayList<>();
    for (String name : names) {
      ExamRecord record = options.read(name).record();
      if (!record.signed() && !draft) {
        Console.err()
            .println("expected a signed record, found a draft: " + name + "; --draft sends it");
        return Tiptoe.COULD_NOT;
      }
      Outbox.Letter letter = letter(record, server);
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
    Sender sender =
        new Sender(outbox, credentials, TRIES, PATIENCE, pause -> Thread.sleep(pause.toMillis()));
    return send(sender, letters) && contents.problems().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }

  private static int list(Outbox outbox) throws IOException {
    Outbox.Contents contents = outbox.contents();
    for (Outbox.Letter letter : contents.letters()) {
      String since =
          outbox
              .since(letter)
              .map(at -> WHEN.format(at.atZone(ZoneId.systemDefault())))
              .orElse("-");
      Console.out()
          .println(
              since
                  + "  "
                  + PlainText.line(letter.identifier())
                  + "  to "
                  + Destination.shown(letter.to()));
    }
    contents.problems().forEach(Console.err()::println);
    if (contents.letters().isEmpty()) {
      Console.err().println("nothing waits to be sent");
    }
    return contents.problems().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }

  private static int clear(Outbox outbox) throws IOException {
    Console.out().println("removed from the outbox: " + outbox.clear());
    return 0;
  }

  private Outbox.Letter letter(ExamRecord record, String server) throws IOException {
    RecordWording wording = options.wording(record);
    String identifier = FhirDocument.bundle(wording).getIdentifier().getValue();
    return new Outbox.Letter(identifier, server, FhirDocument.json(wording));
  }

  private static boolean send(Sender sender, List<Outbox.Letter> letters)
      throws InterruptedException {
    boolean all = true;
    for (Outbox.Letter letter : letters) {
      String identifier = PlainText.line(letter.identifier());
      try {
        sender.send(letter);
        Console.out().println("sent " + identifier);
      } catch (IOException e) {
        Console.err().println(identifier + ": " + ProblemWording.of(e));
        all = false;
      }
    }
    return all;
  }
}
