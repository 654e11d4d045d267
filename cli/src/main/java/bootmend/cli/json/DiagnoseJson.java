package bootmend.cli.json;

import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootChain;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootLink;
import bootmend.boot.FirmwareVersion;
import bootmend.boot.Found;
import bootmend.boot.Verdict;
import bootmend.cli.text.RemedyWords;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Why a card boots or does not, as JSON; its field names are part of the interface. */
public record DiagnoseJson(
        String card, boolean meantForNone, List<Board> boards, List<Firmware> firmware, List<String> notTold) {

    /**
     * One board.
     *
     * @param verdict {@code boots}, {@code stops} or {@code unknown}
     * @param cause null unless it stops
     */
    record Board(
            String board,
            String because,
            String verdict,
            List<String> aboveStock,
            List<Link> links,
            Optional<CauseOf> cause,
            Optional<Once> tryOnce) {}

    /** The try-once start, where the card has other files for it. */
    record Once(String verdict, List<String> aboveStock, List<Link> links, Optional<CauseOf> cause) {}

    /** One link; {@code state} is {@code whole}, {@code missing}, {@code damaged} or {@code unknown}. */
    record Link(
            String link, String state, Optional<String> file, Optional<Integer> line, String why, List<Rest> restsOn) {

        static Link of(BootLink link) {
            return new Link(
                    link.kind().word(),
                    link.state().word(),
                    link.at().or(() -> link.found().stream().findFirst()).map(found -> found.what()),
                    link.at()
                            .flatMap(found -> found.line().isPresent()
                                    ? Optional.of(found.line().getAsInt())
                                    : Optional.empty()),
                    link.why(),
                    link.found().stream().map(Rest::of).toList());
        }
    }

    /** One thing that a link rests on; {@code check} is what was looked at and what it came to. */
    record Rest(String what, OptionalInt line, OptionalLong bytes, String check) {

        static Rest of(Found found) {
            return new Rest(found.what(), found.line(), found.bytes(), found.check());
        }
    }

    /** Why it stops and what repairs it, said as a command where there is one. */
    record CauseOf(String link, String sentence, String origin, String remedy) {}

    /** A build of boot firmware on the card. */
    record Firmware(String file, String version) {

        static Firmware of(FirmwareVersion version) {
            return new Firmware(version.file(), version.words());
        }
    }

    public static DiagnoseJson of(String card, BootDiagnosis diagnosis) {
        return new DiagnoseJson(
                card,
                diagnosis.meantForNone(),
                diagnosis.boards().stream().map(board -> board(card, board)).toList(),
                diagnosis.versions().stream().map(Firmware::of).toList(),
                diagnosis.notTold());
    }

    private static Board board(String card, BoardDiagnosis board) {
        BootChain chain = board.chain();
        return new Board(
                board.board(),
                board.because(),
                chain.verdict().word(),
                aboveStock(chain),
                links(chain),
                cause(card, chain),
                board.tryOnce()
                        .map(once ->
                                new Once(once.verdict().word(), aboveStock(once), links(once), cause(card, once))));
    }

    private static List<Link> links(BootChain chain) {
        return chain.links().stream().map(Link::of).toList();
    }

    private static List<String> aboveStock(BootChain chain) {
        return chain.verdict() instanceof Verdict.Boots boots ? boots.aboveStock() : List.of();
    }

    private static Optional<CauseOf> cause(String card, BootChain chain) {
        return chain.verdict() instanceof Verdict.Stops stops
                ? Optional.of(new CauseOf(
                        stops.cause().link().word(),
                        stops.cause().sentence(),
                        stops.cause().origin().words(),
                        new RemedyWords(card).of(stops.cause().remedy())))
                : Optional.empty();
    }
}
