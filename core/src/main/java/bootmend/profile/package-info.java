/** Profiles: named sets of tuning settings for a board with their evidence, where they are kept, and putting one on a card. */
package bootmend.profile;
