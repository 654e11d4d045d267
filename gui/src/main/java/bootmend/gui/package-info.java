/** The desktop window, over the same door ({@code bootmend.job}) as the commands; nothing stands here yet. */
package bootmend.gui;
