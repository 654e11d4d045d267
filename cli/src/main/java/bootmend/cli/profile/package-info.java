/** Commands on profiles. */
package bootmend.cli.profile;
