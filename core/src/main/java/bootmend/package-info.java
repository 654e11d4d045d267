/** bootmend's library: everything but screens. What every room shares stands here: the error a user can act on. */
package bootmend;
