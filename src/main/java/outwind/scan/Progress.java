package outwind.scan;

/** Is told how far the reading of a file has come; called from several threads, about once for every megabyte. */
@FunctionalInterface
public interface Progress {

    /** Tells nobody. */
    Progress UNSEEN = (done, all) -> { };

    /** So many bytes of so many are read. */
    void at(long bytesDone, long bytesAll);
}
