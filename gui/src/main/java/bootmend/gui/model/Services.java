package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.workplace.Workplace;
import java.util.concurrent.Executor;

/**
 * What the models need.
 *
 * @param screen runs what touches the window, for work that reports while it lasts
 */
public record Services(Workplace workplace, WorkQueue queue, Executor screen, Words words) {}
