package tiptoe.exam.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What guards a journal from beside it: its name, room on the disk, the log of heads. */
class BesideTheJournalTest {
  private static final String A = "a".repeat(64);
  private static final String B = "b".repeat(64);

  @TempDir Path folder;

  @Test
  void aFileIsStillThereUntilItIsRemovedMovedOrReplaced() throws IOException {
    Path place = Files.createDirectory(folder.resolve("exam"));
    Path file = Files.writeString(place.resolve("journal"), "x");
    LinkedFile linked = LinkedFile.of(file);
    assertTrue(linked.isStillThere());
    Files.writeString(file, "xyz");
    assertTrue(linked.isStillThere());
    Files.move(place, folder.resolve("away"));
    assertFalse(linked.isStillThere());
    Files.move(folder.resolve("away"), place);
    assertTrue(linked.isStillThere());
    Path copy = Files.copy(file, place.resolve("copy"));
    Files.move(file, place.resolve("old"));
    Files.move(copy, file);
    assertFalse(linked.isStillThere());
    assertEquals(place.toString(), linked.toString());
  }

  @Test
  void roomIsKeptBackOnceAndGivenUpOnce() throws IOException {
    Path file = folder.resolve("reserve");
    Reserve reserve = Reserve.keep(file);
    assertEquals(64 * 1024, Files.size(file));
    assertEquals(64 * 1024, Files.size(file));
    // A crash has left it: it serves again.
    Reserve again = Reserve.keep(file);
    assertTrue(again.giveUp());
    assertFalse(Files.exists(file));
    assertFalse(reserve.giveUp());
  }

  @Test
  void noRoomIsNoReasonNotToRecord() {
    assertFalse(Reserve.keep(folder.resolve("none/reserve")).giveUp());
  }

  @Test
  void theLogTellsACutEndAndAnotherLine() throws IOException {
    HeadLog log = new HeadLog(folder);
    assertFalse(log.knows("one"));
    log.note("one", 2, B);
    assertTrue(log.knows("one"));
    assertFalse(log.knows("on"));
    assertEquals(List.of(), log.problems("one", List.of(A, B)));
    assertEquals(List.of(), log.problems("one", List.of(A, B, A)));
    assertEquals(List.of(), log.problems("two", List.of()));
    assertEquals(
        List.of("entries up to 2 were kept here, found 1: its end was cut off"),
        log.problems("one", List.of(A)));
    assertEquals(
        List.of("entry 2: it is not the one that was kept here"),
        log.problems("one", List.of(A, A)));
    assertTrue(log.isEnd("one", 2, B));
    assertFalse(log.isEnd("one", 2, A));
    assertFalse(log.isEnd("one", 3, B));
    assertFalse(log.isEnd("two", 2, B));
  }

  @Test
  void whatIsNoLineOfTheLogIsPassedOver() throws IOException {
    HeadLog log = new HeadLog(folder);
    Files.writeString(
        folder.resolve("heads.log"),
        "one\none two three four\none 99999999999 "
            + A
            + "\none 1 abc\n\u0000\none -1 "
            + A
            + "\n");
    assertEquals(List.of(), log.problems("one", List.of(A)));
    log.note("one", 1, A);
    assertTrue(log.isEnd("one", 1, A));
  }
}
