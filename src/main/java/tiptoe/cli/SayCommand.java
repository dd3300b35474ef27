package tiptoe.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tiptoe.language.PhraseBook;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.session.Home;
import tiptoe.session.Understanding;

/** Prints what can be said. */
@Command(
    name = "say",
    mixinStandardHelpOptions = true,
    description = {
      "Prints what can be said, for one region or for all.",
      "It is drawn from the grammars."
    },
    footer = {"", "Example: tiptoe say hips", "         tiptoe say > phrases.md"})
final class SayCommand implements Callable<Integer> {
  @Parameters(paramLabel = "REGION", arity = "0..1", description = "Such as hips; all without it.")
  private String region;

  @Mixin private SettingsOption option;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    Protocol protocol = option.protocol();
    List<Region> wanted = region == null ? protocol.regions() : named(protocol);
    if (wanted.isEmpty()) {
      String known = protocol.regions().stream().map(Region::id).collect(Collectors.joining(", "));
      throw new ParameterException(
          spec.commandLine(), "expected a region (" + known + "), found " + region);
    }
    PhraseBook book = new PhraseBook(Understanding.load(Home.of(protocol)).network(), protocol);
    Console.out().print(region == null ? book.pages() : book.page(wanted.get(0)));
    return 0;
  }

  /** The region of this name, or the only one whose name begins like it. */
  private List<Region> named(Protocol protocol) {
    List<Region> alike =
        protocol.regions().stream()
            .filter(one -> one.id().startsWith(region.toLowerCase(Locale.ROOT)))
            .toList();
    List<Region> exact = protocol.region(region).stream().toList();
    return exact.isEmpty() && alike.size() == 1 ? alike : exact;
  }
}
