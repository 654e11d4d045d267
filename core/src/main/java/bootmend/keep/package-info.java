/** Copies of a boot partition's files, kept in one file on this computer with what is needed to tell that they are whole. */
package bootmend.keep;
