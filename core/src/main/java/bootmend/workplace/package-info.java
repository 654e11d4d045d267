/** The computer bootmend runs on: its clock, the data folder, the published tables, how a card's name becomes an open card. */
package bootmend.workplace;
