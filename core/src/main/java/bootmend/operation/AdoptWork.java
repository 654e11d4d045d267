package bootmend.operation;

import bootmend.CardException;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.operation.LineChange.Line;
import bootmend.tuning.TuningLines;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Makes staged settings the config file's. */
record AdoptWork(Work work) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        StagedFile staged = StagedFile.needed(card);
        ConfigFiles files = ConfigFiles.read(card.volume());
        ConfigFile config = files.main();
        config.refuseWhenNotWhole();
        FilePlanner planner = work.planner(card);
        planner.put(new FileChange(ConfigName.NAME, config.bytes(), staged.bytes()));
        planner.put(new FileChange(StagedFile.NAME, staged.bytes(), null));
        Worked worked =
                Worked.of(new CardViews(work.workplace()).of(card, files), planner.plan("keep the staged settings"));
        return worked.asking(questions(worked.files()));
    }

    /** Lines that tune nothing are no part of a trial, so a difference there is an edit that came after it was staged. */
    private List<String> questions(List<FileEdit> files) {
        long others = files.stream()
                .flatMap(file -> file.lines().stream())
                .filter(line -> !tunes(line.old()) && !tunes(line.changed()))
                .count();
        return others == 0
                ? List.of()
                : List.of((others == 1 ? "One line" : others + " lines") + " of " + ConfigName.NAME
                        + " that set no tuning differ from the staged file and would be as they were when it was staged: "
                        + "what was edited since is lost.");
    }

    private boolean tunes(Optional<Line> line) {
        return line.isPresent()
                && !TuningLines.find(
                                ConfigDocument.parse(line.get().bytes()),
                                work.workplace().tables().vocabulary())
                        .isEmpty();
    }
}
