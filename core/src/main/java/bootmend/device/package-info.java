/** Where bytes live: an open card, partition windows, the write guard, overlays, and files that survive a power cut. */
package bootmend.device;
