/** What the tuning keys mean: vocabulary, stock values, boards, limits; all of it read from data files. */
package bootmend.tuning;
