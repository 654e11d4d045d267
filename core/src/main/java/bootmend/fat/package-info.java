/**
 * FAT12, FAT16 and FAT32: tolerant and bounded when reading, exact when writing.
 *
 * <p>Source throughout: "FAT: General Overview of On-Disk Format", version 1.03, 6 December 2000; ECMA-107, 2nd edition
 * 1995, for FAT12 and FAT16.
 */
package bootmend.fat;
