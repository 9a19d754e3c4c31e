package outwind.scan;

/** Is told how far the reading of a file has come; called from several threads, about once for every megabyte. */
@FunctionalInterface
public interface Progress {

    /** So many bytes of so many are read. */
    void at(long bytesDone, long bytesAll);
}
