/** Earlier versions of the config file that still stand on a card: finding their texts, and putting them in order. */
package bootmend.earlier;
