/** bootmend's library: everything but screens. */
package bootmend;
