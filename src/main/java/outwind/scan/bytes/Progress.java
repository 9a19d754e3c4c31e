package outwind.scan.bytes;

/** Hears how far the reading of a long file has come: a few times a second, on the thread that asked for it. */
public interface Progress {

    /** Tells nobody. */
    Progress UNSEEN = (bytesDone, bytesAll) -> { };

    /**
     * @param bytesDone read so far, never less than the time before
     * @param bytesAll  to be read in all
     */
    void at(long bytesDone, long bytesAll);
}
