/** This computer's files and disks as cards: what each system says of its disks, and how one is opened, held and let go. */
package bootmend.device.system;
