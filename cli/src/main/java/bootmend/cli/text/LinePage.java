package bootmend.cli.text;

import bootmend.operation.FileBody;
import bootmend.operation.FileEdit;
import bootmend.operation.LineChange;
import bootmend.page.Amount;
import java.util.List;

/** Prints what becomes of files: lines before and after a change, one under the other. */
public final class LinePage {

    private final Screen screen;

    public LinePage(Screen screen) {
        this.screen = screen;
    }

    public void print(List<FileEdit> files) {
        for (FileEdit file : files) {
            if (file.kind() != FileEdit.Kind.CHANGED) {
                screen.line("bold", head(file));
            }
            file.lines().forEach(this::print);
        }
    }

    private static String head(FileEdit file) {
        if (file.body().isPresent()) {
            FileBody body = file.body().get();
            return file.path() + (file.kind() == FileEdit.Kind.ADDED ? " is new, " : " is replaced, ")
                    + Amount.size(body.size()) + ", sha256 " + body.sha256() + ".";
        }
        return switch (file.kind()) {
            case CHANGED, REPLACED -> file.path() + ":";
            case ADDED ->
                file.against()
                        .map(other -> file.path() + " is new, as " + other
                                + (file.lines().isEmpty() ? "." : " but for these lines:"))
                        .orElse(file.path() + " is new, " + lines(file));
            case REMOVED -> file.path() + " is removed.";
            case REWRITTEN -> file.path() + " is saved anew as plain text, " + lines(file);
        };
    }

    private static String lines(FileEdit file) {
        return Amount.count(file.lines().size(), "line") + (file.lines().isEmpty() ? "." : ":");
    }

    private void print(LineChange line) {
        String place = line.file() + " line " + line.line();
        if (line.before().isPresent()) {
            screen.exact(place + "  before  " + line.before().get());
            screen.exact(
                    " ".repeat(place.length()) + "  after   " + line.after().orElse("(taken out)"));
        } else {
            screen.exact(place + "  new     " + line.after().orElse(""));
        }
    }
}
