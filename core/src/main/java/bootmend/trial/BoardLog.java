package bootmend.trial;

import java.util.List;

/**
 * A board's log as it was read.
 *
 * @param samples the good rows, in order of time
 * @param badRows how many rows were left out
 * @param problems the first of them, each with its line number and what was wrong
 * @param cutShort whether the log has more rows than are read
 * @param restarts indexes of the samples that are the first after another start of the board
 * @param clues what the log says of itself
 */
record BoardLog(
        List<Sample> samples,
        long badRows,
        List<String> problems,
        boolean cutShort,
        List<Integer> restarts,
        LogClues clues) {

    BoardLog {
        samples = List.copyOf(samples);
        problems = List.copyOf(problems);
        restarts = List.copyOf(restarts);
    }
}
