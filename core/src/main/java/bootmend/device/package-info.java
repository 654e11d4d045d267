/** Where bytes live: image files, raw disks, partition windows, the write guard, and devices that record or fail for tests. */
package bootmend.device;
