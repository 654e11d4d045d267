package bootmend.check;

import bootmend.NextStep;
import bootmend.finding.Fix;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.tuning.DataFile;
import bootmend.tuning.DataRow;
import bootmend.tuning.Source;
import bootmend.tuning.Sources;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Every rule, as the data file has it. */
public final class RuleBook {

    private static final String NOT_FOR_IT = "-";
    private static final Set<String> UNPUBLISHED = Set.of("common practice, no source", "value from memory");
    private static final Map<String, Severity> SEVERITIES =
            Stream.of(Severity.values()).collect(Collectors.toMap(Severity::word, Function.identity()));

    private static final Map<String, NextStep> STEPS = Map.of(
            "repair", NextStep.Plain.REPAIR_CARD,
            "reset", NextStep.Plain.RESET_CARD,
            "recover", NextStep.RecoverCard.NO_RECORD);

    private static final Map<String, Fix> FIXES =
            Map.of("repair", Fix.REPAIR, "reset", Fix.RESET, "other-file", Fix.OTHER_FILE, "nothing", Fix.NOTHING);

    private final List<Rule> rules;
    private final Map<String, Rule> byId;

    private RuleBook(List<Rule> rules) {
        this.rules = rules;
        this.byId = rules.stream().collect(Collectors.toMap(Rule::id, Function.identity()));
    }

    /**
     * Reads the rules.
     *
     * @throws bootmend.tuning.DataFileException if the data file is damaged
     */
    public static RuleBook load(Sources sources) {
        return read(DataFile.resource(RuleBook.class, "rules.csv"), fixes(), sources)
                .withSteps(DataFile.resource(RuleBook.class, "rule-steps.csv"));
    }

    /** What repairs the findings of a rule, by its id; of one that is not there, a decision does. */
    static Map<String, Fix> fixes() {
        return DataFile.resource(RuleBook.class, "fixes.csv")
                .withColumns("id", "fix")
                .map(Fixed::of, Fixed::id)
                .stream()
                .collect(Collectors.toMap(Fixed::id, Fixed::fix));
    }

    private record Fixed(String id, Fix fix) {

        static Fixed of(DataRow row) {
            return new Fixed(row.required("id"), row.choice("fix", FIXES));
        }
    }

    static RuleBook read(DataFile file, Map<String, Fix> fixes, Sources sources) {
        return new RuleBook(
                file.withColumns("id", "ship", "firmware_update", "stability_run", "meaning", "remedy", "source")
                        .map(row -> rule(row, fixes, sources), Rule::id));
    }

    /** The same rules, each with the steps that the other data file has for it, in that file's order. */
    RuleBook withSteps(DataFile file) {
        Map<String, List<NextStep>> steps = new HashMap<>();
        file.withColumns("rule", "step").rows().forEach(row -> {
            String id = row.required("rule");
            if (!byId.containsKey(id)) {
                throw row.error("there is no rule " + id);
            }
            steps.computeIfAbsent(id, none -> new ArrayList<>()).add(row.choice("step", STEPS));
        });
        return new RuleBook(rules.stream()
                .map(rule -> rule.withSteps(steps.getOrDefault(rule.id(), List.of())))
                .toList());
    }

    private static Rule rule(DataRow row, Map<String, Fix> fixes, Sources sources) {
        Map<Purpose, Severity> severities = new EnumMap<>(Purpose.class);
        for (Purpose purpose : Purpose.values()) {
            if (!row.text(column(purpose)).equals(NOT_FOR_IT)) {
                severities.put(purpose, row.choice(column(purpose), SEVERITIES));
            }
        }
        if (severities.isEmpty()) {
            throw row.error("the rule matters for no purpose");
        }
        String id = row.required("id");
        if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
            throw row.error("a rule's id is lower-case words joined by hyphens, found " + id);
        }
        return new Rule(
                id,
                severities,
                fixes.getOrDefault(id, Fix.DECISION),
                row.required("meaning"),
                row.required("remedy"),
                List.of(),
                source(row, sources));
    }

    private static String column(Purpose purpose) {
        return purpose.word().replace('-', '_');
    }

    private static String source(DataRow row, Sources sources) {
        return Stream.of(row.required("source").split(";"))
                .map(String::trim)
                .map(part -> UNPUBLISHED.contains(part)
                        ? part
                        : sources.find(part)
                                .map(Source::citation)
                                .orElseThrow(() -> row.error("unknown source " + part)))
                .collect(Collectors.joining("; "));
    }

    /** In the data file's order. */
    public List<Rule> all() {
        return rules;
    }

    public Optional<Rule> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }
}
