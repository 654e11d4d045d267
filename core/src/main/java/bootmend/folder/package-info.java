/** Boot partitions that the system has mounted: their files reached through the system rather than through sectors. */
package bootmend.folder;
