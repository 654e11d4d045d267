/** YAML files that a user may edit by hand: read with the line of every error, written as a person would lay them out. */
package bootmend.store;
