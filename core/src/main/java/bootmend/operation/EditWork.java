package bootmend.operation;

import bootmend.CardException;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FilePlanner;
import bootmend.config.ConfigDocument;
import bootmend.config.Filter;
import bootmend.config.VisibleText;
import bootmend.edit.LineName;
import bootmend.edit.LineSwitch;
import bootmend.edit.SettingEdit;
import bootmend.edit.WantedSetting;
import bootmend.finding.Finding;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardBoards;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Gives single settings their values and switches single lines. */
record EditWork(Work work, ChangeRequest.Edit request) implements WorkOut {

    private static final int LONGEST_TITLE = 60;

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        List<WantedSetting> wanted = wanted();
        if (wanted.isEmpty()
                && request.commentOut().isEmpty()
                && request.uncomment().isEmpty()) {
            throw CardException.usage(
                    "there is nothing to set",
                    "Name settings as KEY=VALUE, such as arm_freq=1500, or lines to switch.");
        }
        Optional<Filter> section = section();
        Optional<Board> board = board();
        ConfigFiles files = ConfigFiles.read(card.volume());
        for (ConfigFile file : files.all()) {
            file.refuseWhenNotWhole();
        }
        Map<String, ConfigDocument> edited = edited(card, files, board, wanted, section);
        List<String> questions = new NewBlockers(work, board).refuse(card, edited, "set");
        List<Finding> brings =
                new NewFindings(work, board.map(BoardFacts::of).orElse(BoardFacts.none())).of(card, edited);
        FilePlanner planner = work.planner(card);
        for (ConfigFile file : files.all()) {
            planner.replace(
                    file.path(),
                    file.entry(),
                    file.bytes(),
                    edited.get(file.path()).toBytes());
        }
        return Worked.of(new CardViews(work.workplace()).of(card, files), planner.plan(title(wanted)))
                .bringing(brings)
                .asking(questions)
                .noting(StockWork.notes(card));
    }

    private Map<String, ConfigDocument> edited(
            OpenCard card,
            ConfigFiles files,
            Optional<Board> board,
            List<WantedSetting> wanted,
            Optional<Filter> section)
            throws CardException, IOException {
        Map<String, ConfigDocument> documents = new LinkedHashMap<>();
        files.all().forEach(file -> documents.put(file.path(), file.document()));
        String main = files.main().path();
        Map<String, ConfigDocument> switched = LineSwitch.apply(
                main,
                documents,
                request.commentOut().stream().map(LineName::new).toList(),
                request.uncomment().stream().map(LineName::new).toList());
        if (wanted.isEmpty()) {
            return switched;
        }
        SettingEdit edit = board.isPresent()
                ? SettingEdit.forBoard(tables(), board.get(), files::pathOf)
                : SettingEdit.forBoards(tables(), new CardBoards(tables()).of(card, files), files::pathOf);
        return edit.apply(main, switched, wanted, section);
    }

    /** @throws CardException where one thing is given two values */
    private List<WantedSetting> wanted() throws CardException {
        List<WantedSetting> wanted = new ArrayList<>();
        Set<String> subjects = new LinkedHashSet<>();
        for (String text : request.settings()) {
            for (WantedSetting each : WantedSetting.parse(text)) {
                if (!subjects.add(each.subject())) {
                    throw CardException.usage(
                            VisibleText.of(each.subject()) + " is given twice", "Give each setting one value.");
                }
                wanted.add(each);
            }
        }
        return wanted;
    }

    private Optional<Filter> section() throws CardException {
        return request.section().isPresent()
                ? Optional.of(SettingEdit.section(tables(), request.section().get()))
                : Optional.empty();
    }

    private Optional<Board> board() throws CardException {
        return request.board().isPresent()
                ? new RequestedBoard(tables())
                        .facts(BoardRequest.of(request.board().get()))
                        .board()
                : Optional.empty();
    }

    private static String title(List<WantedSetting> wanted) {
        if (wanted.isEmpty()) {
            return "switch lines";
        }
        String text = "set "
                + String.join(", ", wanted.stream().map(WantedSetting::line).toList());
        String visible = VisibleText.of(text);
        return visible.length() <= LONGEST_TITLE ? visible : "set " + wanted.size() + " values";
    }

    private TuningTables tables() {
        return work.workplace().tables();
    }
}
