/**
 * What the window shows and what its controls do, without any toolkit: values that are watched, and jobs that run off the
 * screen's thread. Every method is called on the screen's thread unless it says otherwise.
 */
package bootmend.gui.model;
