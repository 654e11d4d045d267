package bootmend.operation;

import java.util.Optional;

/**
 * One line of a config file before and after a change.
 *
 * @param line its number before the change, from 1; a new line has the number of the line it is put in front of
 * @param before empty where the line is new
 * @param after empty where the line is taken out
 */
public record LineChange(String file, int line, Optional<String> before, Optional<String> after) {}
