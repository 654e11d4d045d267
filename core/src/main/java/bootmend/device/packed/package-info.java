/** Packed card images, read without unpacking them to a file. */
package bootmend.device.packed;
