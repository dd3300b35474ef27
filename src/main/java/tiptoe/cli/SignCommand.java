package tiptoe.cli;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.exam.journal.OpenExam;
import tiptoe.screen.review.RecordSigning;
import tiptoe.screen.review.Reviewer;
import tiptoe.settings.Settings;
import tiptoe.wording.ProblemWording;

/** Signs a record without a screen. */
@Command(
    name = "sign",
    description = {
      "Signs a record: seals all its entries and its sound.",
      "Shows first what is missing and open.",
      "A signed record takes no edit but an addendum, which has a signature of its own."
    },
    footer = {
      "",
      "Example: tiptoe sign 2026-03-01-0900-k3f9 --as \"Rowan Reed\" --role registrar",
      "         tiptoe sign 2026-03-01-0900-k3f9 --as \"Rowan Reed\" --role registrar \\",
      "             --addendum \"blood culture sterile\""
    })
final class SignCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECORD", arity = "1..*", description = "Ids or folders.")
  private List<String> names;

  @Option(names = "--yes", description = "Do not ask.")
  private boolean yes;

  @Option(
      names = "--addendum",
      paramLabel = "TEXT",
      description = "With a signed record: add this remark and sign it.")
  private String addendum;

  @Option(
      names = "--despite",
      paramLabel = "WORDS",
      description = "Sign while something that matters is not settled: why, in your own words.")
  private String despite;

  @Mixin private RecordOptions options;
  @Mixin private KeepAudioOption keepAudio;
  @Mixin private KeyOption key;
  @Mixin private WhoOption who;

  @Override
  public Integer call() throws IOException {
    Settings settings = options.settings();
    Reviewer signer = signer(settings);
    Signer keyed = key.signer(options.place());
    WrongUse.unless(
        addendum == null || names.size() == 1,
        "expected one record beside --addendum, found " + names.size());
    int unsigned = 0;
    for (String name : names) {
      try (OpenExam open = options.open(name)) {
        if (names.size() > 1) {
          Console.out().println(open.folder().name());
        }
        unsigned += sign(open, signer, keyed, settings) ? 0 : 1;
      } catch (IOException e) {
        Console.err().println(ProblemWording.of(e));
        unsigned++;
      }
    }
    return unsigned == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  /** Who signs: both name and role, in letters that can be seen. */
  private Reviewer signer(Settings settings) {
    Reviewer signer = who.of(settings).orElse(null);
    if (signer == null || !signer.isVisible()) {
      throw new WrongUse(
          "expected who signs, by --as NAME --role ROLE in visible letters or in the settings,"
              + " found "
              + (signer == null ? "nobody" : "no role"));
    }
    return signer;
  }

  private boolean sign(OpenExam open, Reviewer signer, Signer keyed, Settings settings)
      throws IOException {
    ExamRecord record = open.examination().record();
    KeepAudio keep = keepAudio.of(settings, record);
    RecordSigning signing =
        new RecordSigning(open, options.wording(record), keep, addendum, despite);
    signing.before().forEach(Console.out()::println);
    signing
        .alterations()
        .forEach(problem -> Console.err().println("not as it was recorded: " + problem));
    signing.sound().forEach(Console.out()::println);
    if (!yes && !Console.agreed("sign as " + signer + "?")) {
      Console.out().println("not signed");
      return false;
    }
    signing.sign(signer, keyed).forEach(Console.out()::println);
    return true;
  }
}
