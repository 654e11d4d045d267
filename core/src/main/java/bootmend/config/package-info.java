/** The board's config file as a lossless document: every byte kept, every line classified, every edit exact. */
package bootmend.config;
