/** Small files of a user's own that bootmend keeps: YAML that may be edited by hand, written so that none is ever half. */
package bootmend.store;
