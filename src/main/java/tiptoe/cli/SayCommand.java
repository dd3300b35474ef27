package tiptoe.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tiptoe.language.PhraseBook;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.session.Home;
import tiptoe.session.Understanding;

/** Prints what can be said. */
@Command(
    name = "say",
    description = {
      "Prints what can be said, for one region or for all.",
      "It is drawn from the grammars."
    },
    footer = {"", "Example: tiptoe say hips", "         tiptoe say > phrases.md"})
final class SayCommand implements Callable<Integer> {
  @Parameters(paramLabel = "REGION", arity = "0..1", description = "Such as hips; all without it.")
  private String region;

  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    Protocol protocol = option.protocol();
    Optional<Region> wanted =
        Optional.ofNullable(region).flatMap(name -> PhraseBook.region(protocol, name));
    if (region != null && wanted.isEmpty()) {
      String known = protocol.regions().stream().map(Region::id).collect(Collectors.joining(", "));
      throw new WrongUse("expected a region (" + known + "), found " + region);
    }
    PhraseBook book = new PhraseBook(Understanding.load(Home.of(protocol)).network(), protocol);
    Console.out().print(wanted.map(book::page).orElseGet(book::pages));
    return 0;
  }
}
