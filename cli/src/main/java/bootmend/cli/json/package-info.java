/** Documents for programs. */
package bootmend.cli.json;
