package bootmend.tuning.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.ConfigDocument;
import bootmend.tuning.TuningTables;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A config file, what is known of the board, and the effective values worked out by hand from the published rules.
 *
 * <p>A value is written {@code KEY=VALUE STATE LINE}, the line as {@code FILE:NUMBER} where it is not in
 * {@code config.txt}; then {@code from KEY} where another key gives it, and {@code on WHAT; WHAT} where it depends.
 */
record RuleCase(String rule, BoardFacts facts, String config, Map<String, String> files, List<String> values) {

    private static final TuningTables TABLES = TuningTables.load();
    private static final String CONFIG = "config.txt";

    static RuleCase rule(String rule) {
        return new RuleCase(rule, BoardFacts.none(), "", Map.of(), List.of());
    }

    /** The board, nothing else known. */
    static BoardFacts board(String id) {
        return BoardFacts.of(TABLES.boards().find(id).orElseThrow());
    }

    /** The board behind a revision code. */
    static BoardFacts code(String revisionCode) {
        return BoardFacts.none().withRevision(TABLES.revisions().decode(revisionCode));
    }

    RuleCase on(String boardId) {
        return on(board(boardId));
    }

    RuleCase on(BoardFacts known) {
        return new RuleCase(rule, known, config, files, values);
    }

    RuleCase reads(String... lines) {
        return new RuleCase(rule, facts, String.join("\n", lines) + "\n", files, values);
    }

    RuleCase including(String name, String... lines) {
        Map<String, String> more = new HashMap<>(files);
        more.put(name, String.join("\n", lines) + "\n");
        return new RuleCase(rule, facts, config, more, values);
    }

    RuleCase gives(String... expected) {
        return new RuleCase(rule, facts, config, files, List.of(expected));
    }

    Resolution resolve() {
        return new Resolver(TABLES)
                .resolve(
                        CONFIG,
                        ConfigDocument.parse(bytes(config)),
                        name -> Optional.ofNullable(files.get(name)).map(RuleCase::bytes),
                        facts);
    }

    void check() {
        assertThat(resolve().effective()).extracting(RuleCase::written).containsExactlyElementsOf(values);
    }

    private static String written(Effective effective) {
        String place = effective.file().equals(CONFIG) ? "" : effective.file() + ":";
        String from = effective.chosen().setBy().equals(effective.key())
                ? ""
                : " from " + effective.chosen().setBy();
        String on = effective.dependsOn().isEmpty() ? "" : " on " + String.join("; ", effective.dependsOn());
        return effective.key() + "=" + effective.value() + " "
                + effective.state().word() + " " + place + effective.line() + from + on;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public String toString() {
        return rule;
    }
}
