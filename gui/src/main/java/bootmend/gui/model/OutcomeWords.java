package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.operation.Made;

/** What is said of a change that was made, and what may be done with the card now. */
public record OutcomeWords(Words words) implements Made.Cases<OutcomeWords.Said> {

    /**
     * Two sentences and what may be done with the card.
     *
     * @param done what was done with every byte
     * @param next whether the card can be taken out, or what must be done before
     */
    public record Said(String done, String next) {}

    public Said of(Made made) {
        return made.match(this);
    }

    @Override
    public Said onCard(Made.OnCard made) {
        return new Said(
                words.of("made.card") + " " + words.of(made.secondReader() ? "made.card.second" : "made.card.first"),
                words.of(made.nameKept() ? "made.card.safe" : "made.moved"));
    }

    @Override
    public Said inFolder(Made.InFolder made) {
        return new Said(words.of("made.folder"), words.of(made.nameKept() ? "made.folder.eject" : "made.moved"));
    }

    @Override
    public Said inFile(Made.InFile made) {
        return new Said(words.of("made.file"), words.of("made.file.next"));
    }

    @Override
    public Said closed(Made.Closed made) {
        return new Said(words.of("made.closed"), words.of("made.closed.next"));
    }
}
