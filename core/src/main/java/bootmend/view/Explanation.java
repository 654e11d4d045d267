package bootmend.view;

/** What a word means that stands in a config file, in a finding or in a board's report. */
public sealed interface Explanation permits KeyExplanation, BoardExplanation, ThrottleExplanation, RuleExplanation {}
