package bootmend.operation;

import bootmend.CardException;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.config.LineKind;
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

    /** Staging sets, adds and comments out tuning lines and adds sections for them; any other difference came after it. */
    private List<String> questions(List<FileEdit> files) {
        long others = files.stream()
                .flatMap(file -> file.lines().stream())
                .filter(line -> line.old().isPresent() ? !tunes(line.old()) : !isStaging(line.changed()))
                .count();
        return others == 0
                ? List.of()
                : List.of((others == 1 ? "One line" : others + " lines") + " of " + ConfigName.NAME
                        + " that set no tuning are not as they were when the settings were staged; what was edited "
                        + "since is lost.");
    }

    private boolean tunes(Optional<Line> line) {
        return line.isPresent()
                && !TuningLines.find(document(line), work.workplace().tables().vocabulary())
                        .isEmpty();
    }

    private boolean isStaging(Optional<Line> added) {
        boolean section = document(added).lines().stream().allMatch(line -> line.kind() instanceof LineKind.Section);
        return section || tunes(added);
    }

    private static ConfigDocument document(Optional<Line> line) {
        return ConfigDocument.parse(line.orElseThrow().bytes());
    }
}
