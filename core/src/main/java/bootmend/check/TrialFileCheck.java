package bootmend.check;

import bootmend.config.ConfigDocument;
import bootmend.finding.Place;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.Vocabulary;
import java.util.List;
import java.util.Optional;

/** A file that a board reads in place of the config file where it is started once with its try-once flag. */
record TrialFileCheck(Vocabulary vocabulary) implements Check {

    static final String NAME = "tryboot.txt";

    @Override
    public List<Remark> look(CardContent card) {
        Optional<CardFiles.Entry> file = card.files().file(NAME);
        return file
                .map(entry -> Remark.of(
                        "tryboot-file", Place.file(entry.path()), "tryboot.txt is on the card" + holds(card, entry)))
                .stream()
                .toList();
    }

    private String holds(CardContent card, CardFiles.Entry entry) {
        FileText text = card.texts().get(entry.path());
        if (text == null) {
            return ".";
        }
        List<TuningLine> lines = TuningLines.find(ConfigDocument.parse(text.bytes()), vocabulary).stream()
                .filter(TuningLine::resets)
                .toList();
        return lines.isEmpty()
                ? "."
                : " and tunes: " + lines.size() + (lines.size() == 1 ? " active line, " : " active lines, the first ")
                        + lines.get(0).key() + "=" + lines.get(0).value() + " (line "
                        + lines.get(0).lineNumber() + ").";
    }
}
