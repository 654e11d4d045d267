/** The search for a board's highest clock and then its lowest voltage: a model of stability, limits, the next trial and why. */
package bootmend.trial.search;
