/** Partition tables (MBR, GPT, none at all) and the choice of the partition that a board boots from. */
package bootmend.partition;
