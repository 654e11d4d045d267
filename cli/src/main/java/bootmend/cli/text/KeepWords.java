package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.view.KeepView;

/** Says what was kept of a card. */
public record KeepWords(Screen screen) {

    /** All of it. */
    public void print(KeepView kept) {
        screen.line(
                "bold",
                "Kept: " + Amount.count(kept.files(), "file") + ", " + Amount.size(kept.bytes()) + ", in " + kept.file()
                        + " (" + Amount.size(kept.fileBytes()) + "), synced and read back.");
        screen.line("sha256 " + kept.sha256());
        notes(kept);
    }

    /** In one line, before a change. */
    public void printShort(KeepView kept) {
        screen.line("Kept first: " + Amount.count(kept.files(), "file") + " in " + kept.file() + ", read back.");
        notes(kept);
    }

    private void notes(KeepView kept) {
        kept.notes().forEach(note -> screen.line("bold", "Not whole: " + note + "."));
    }
}
