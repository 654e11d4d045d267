/** Files about cards that were worked on: pages, tables, slips. */
package bootmend.cli.report;
