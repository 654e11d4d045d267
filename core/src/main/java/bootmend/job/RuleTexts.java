package bootmend.job;

import java.util.List;

/** The rules that a check goes by, for whoever explains them. */
@FunctionalInterface
public interface RuleTexts {

    /** Every rule, in the data file's order. */
    List<RuleExplanation> all();

    /** No rules. */
    static RuleTexts none() {
        return List::of;
    }
}
