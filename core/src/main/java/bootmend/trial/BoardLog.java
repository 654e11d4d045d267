package bootmend.trial;

import java.util.List;

/**
 * A board's log as it was read.
 *
 * @param samples the good rows, in order of time
 * @param badRows how many rows were left out
 * @param problems the first of them, each with its line number and what was wrong
 * @param interrupted whether the log has more rows than are read
 */
record BoardLog(List<Sample> samples, long badRows, List<String> problems, boolean interrupted) {

    BoardLog {
        samples = List.copyOf(samples);
        problems = List.copyOf(problems);
    }
}
