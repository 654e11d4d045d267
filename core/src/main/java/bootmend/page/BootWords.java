package bootmend.page;

import bootmend.Sentence;
import bootmend.boot.BootChain;
import bootmend.boot.BootLink;
import bootmend.boot.BootOutcome;
import bootmend.boot.Cause;
import bootmend.boot.Found;
import bootmend.boot.LinkKind;
import bootmend.boot.LinkState;
import bootmend.boot.Verdict;
import java.util.stream.Collectors;

/** How a boot chain is said, on every screen and page alike; text from a card is still to be made visible. */
public final class BootWords {

    private BootWords() {}

    /** The boards, and which start of theirs where it is not the ordinary one. */
    public static String boards(BootOutcome outcome) {
        return String.join(" ", outcome.boards())
                + (outcome.start() == BootChain.Start.TRY_ONCE ? ", try-once start" : "");
    }

    /** What a chain comes to, in a sentence that follows a colon. */
    public static String verdict(Verdict verdict) {
        if (verdict instanceof Verdict.Boots boots) {
            return boots.aboveStock().isEmpty()
                    ? "boots as far as the card can tell; try the board, its supply and its own boot memory next."
                    : "boots as far as the card can tell; its settings are above stock ("
                            + String.join(", ", boots.aboveStock()) + "): reset is the next step.";
        }
        if (verdict instanceof Verdict.Stops stops) {
            return "stops at the " + name(stops.cause().link()) + ".";
        }
        Verdict.Unknown unknown = (Verdict.Unknown) verdict;
        return "cannot be told: the " + name(unknown.link()) + " hangs on what the card does not say, " + unknown.why()
                + ".";
    }

    /** A link in words, such as {@code device tree}. */
    public static String name(LinkKind link) {
        return switch (link) {
            case UPDATE -> "waiting firmware update";
            case FIRMWARE -> "boot firmware";
            case CONFIG -> "config file";
            case DEVICE_TREE -> "device tree";
            case INITRAMFS -> "early file system";
            case COMMAND_LINE -> "command line";
            case PARTITION, KERNEL, OVERLAYS, ROOT -> link.word();
        };
    }

    /** Why the board stops and what that most likely came from, in two sentences. */
    public static String cause(Cause cause) {
        String stop = cause.sentence().endsWith(".") ? " " : ". ";
        return cause.sentence() + stop + Sentence.of(cause.origin().words());
    }

    /** What a link rests on, or why it is not whole. */
    public static String restsOn(BootLink link) {
        return link.state() == LinkState.WHOLE && !link.found().isEmpty()
                ? link.found().stream().map(BootWords::found).collect(Collectors.joining("; "))
                : link.why();
    }

    /** One thing found: its name, its line, its size and what the look at it came to, as far as it has them. */
    public static String found(Found found) {
        String line = found.line().isPresent() ? " line " + found.line().getAsInt() : "";
        String bytes =
                found.bytes().isPresent() ? ", " + Amount.count(found.bytes().getAsLong(), "byte") : "";
        return found.what() + line + bytes + (found.check().isEmpty() ? "" : ": " + found.check());
    }
}
