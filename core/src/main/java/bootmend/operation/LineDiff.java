package bootmend.operation;

import bootmend.change.FileChange;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.SavedText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The lines in which two versions of a config file differ. */
final class LineDiff {

    private LineDiff() {}

    static List<LineChange> of(List<FileChange> files) {
        List<LineChange> changes = new ArrayList<>();
        files.forEach(file -> changes.addAll(of(file)));
        return changes;
    }

    private static List<LineChange> of(FileChange file) {
        List<LineChange> changes = new ArrayList<>();
        if (file.before() == null || file.after() == null) {
            // A file that comes or goes as a whole; what the change is called says so.
            return changes;
        }
        if (SavedText.of(file.before()).problems().contains(SavedText.Problem.UTF_16)
                || SavedText.of(file.after()).problems().contains(SavedText.Problem.UTF_16)) {
            // Its bytes have no lines to compare with those of plain text.
            return changes;
        }
        for (LineEdit edit : LineEdit.between(texts(file.before()), texts(file.after()), String::equals)) {
            List<String> old = edit.old();
            List<String> changed = edit.changed();
            int first = edit.at() + 1;
            for (int i = 0; i < Math.max(old.size(), changed.size()); i++) {
                changes.add(new LineChange(file.path(), first + Math.min(i, old.size()), at(old, i), at(changed, i)));
            }
        }
        return changes;
    }

    private static Optional<String> at(List<String> lines, int index) {
        return index < lines.size() ? Optional.of(lines.get(index)) : Optional.empty();
    }

    private static List<String> texts(byte[] bytes) {
        return ConfigDocument.parse(bytes).lines().stream()
                .map(ConfigLine::text)
                .toList();
    }
}
