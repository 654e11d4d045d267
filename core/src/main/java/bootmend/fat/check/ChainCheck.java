package bootmend.fat.check;

import bootmend.fat.ChainEnding;

/**
 * What following one chain to its end showed.
 *
 * @param first where it starts, 0 for none
 * @param length clusters that are its own, counted up to where it breaks off
 * @param last the last of these, 0 for none
 * @param ending how it breaks off
 * @param obstacle the cluster number at which it breaks off, 0 where it does not
 */
record ChainCheck(long first, int length, long last, ChainEnding ending, long obstacle) {

    boolean isComplete() {
        return ending == ChainEnding.COMPLETE;
    }

    boolean crosses() {
        return ending == ChainEnding.CROSSES;
    }
}
