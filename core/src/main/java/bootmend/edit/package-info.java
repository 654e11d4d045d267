/** Single decisions in config files: one setting, one line; which bytes of which line change. */
package bootmend.edit;
