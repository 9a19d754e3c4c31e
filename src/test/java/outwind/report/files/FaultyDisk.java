package outwind.report.files;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.StandardOpenOption;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.StreamSupport;

/**
 * The disk, which fails at a chosen step: every making, opening, writing, moving and deleting counts as one. A write
 * that fails has written half of what it was given. An {@link IOException} is thrown once, an {@link Error} at every
 * later step too, because nothing is done any more after a process is killed.
 */
final class FaultyDisk extends FileSystemProvider {

    private final FileSystem real;
    private final FileSystem faulty = new Faulty();
    private final int failing;
    private final Throwable trouble;
    private final List<String> steps = new ArrayList<>();

    private FaultyDisk(FileSystem real, int failing, Throwable trouble) {
        this.real = real;
        this.failing = failing;
        this.trouble = trouble;
    }

    /** A folder on a disk that fails at the step of this number, counted from 0. */
    static Path at(Path folder, int failing, Throwable trouble) {
        return new FaultyDisk(folder.getFileSystem(), failing, trouble).wrapped(folder);
    }

    /** What was done on the disk of this path, step by step. */
    static List<String> steps(Path path) {
        return ((FaultyDisk) path.getFileSystem().provider()).steps;
    }

    private boolean failsNow(String what) {
        steps.add(what);
        return steps.size() - 1 == failing || trouble instanceof Error && steps.size() - 1 > failing;
    }

    private void step(String what) throws IOException {
        if (failsNow(what)) {
            fail();
        }
    }

    private void fail() throws IOException {
        if (trouble instanceof Error killed) {
            throw killed;
        }
        throw (IOException) trouble;
    }

    private Path wrapped(Path path) {
        return (Path) Proxy.newProxyInstance(Path.class.getClassLoader(), new Class<?>[] {Path.class},
            (proxy, method, given) -> {
                Object[] args = given == null ? new Object[0] : Arrays.stream(given).map(this::bare).toArray();
                if (method.getName().equals("getFileSystem")) {
                    return faulty;
                }
                try {
                    Object answer = method.invoke(path, args);
                    return answer instanceof Path other ? wrapped(other) : answer;
                } catch (InvocationTargetException e) {
                    throw e.getCause();
                }
            });
    }

    private Object bare(Object given) {
        return given instanceof Path path && Proxy.isProxyClass(given.getClass()) ? bare(path) : given;
    }

    private Path bare(Path path) {
        return real.getPath(path.toString());
    }

    @Override
    public SeekableByteChannel newByteChannel(Path path, Set<? extends OpenOption> options, FileAttribute<?>... as)
            throws IOException {
        boolean writes = options.contains(StandardOpenOption.WRITE);
        if (writes) {
            step(options.contains(StandardOpenOption.CREATE_NEW) ? "create" : "open");
        }
        SeekableByteChannel channel = real.provider().newByteChannel(bare(path), options, as);
        return writes ? new Channel(channel) : channel;
    }

    @Override
    public void createDirectory(Path folder, FileAttribute<?>... as) throws IOException {
        step("make folder");
        real.provider().createDirectory(bare(folder), as);
    }

    @Override
    public void delete(Path path) throws IOException {
        step("delete");
        real.provider().delete(bare(path));
    }

    @Override
    public void move(Path from, Path to, CopyOption... options) throws IOException {
        step("move");
        real.provider().move(bare(from), bare(to), options);
    }

    @Override
    public void copy(Path from, Path to, CopyOption... options) throws IOException {
        step("copy");
        real.provider().copy(bare(from), bare(to), options);
    }

    @Override
    public DirectoryStream<Path> newDirectoryStream(Path folder, DirectoryStream.Filter<? super Path> filter)
            throws IOException {
        DirectoryStream<Path> inside = real.provider().newDirectoryStream(bare(folder),
            path -> filter.accept(wrapped(path)));
        return new DirectoryStream<>() {
            @Override
            public Iterator<Path> iterator() {
                return StreamSupport.stream(inside.spliterator(), false).map(FaultyDisk.this::wrapped).iterator();
            }

            @Override
            public void close() throws IOException {
                inside.close();
            }
        };
    }

    @Override
    public boolean isSameFile(Path one, Path other) throws IOException {
        return real.provider().isSameFile(bare(one), bare(other));
    }

    @Override
    public boolean isHidden(Path path) throws IOException {
        return real.provider().isHidden(bare(path));
    }

    @Override
    public FileStore getFileStore(Path path) throws IOException {
        return real.provider().getFileStore(bare(path));
    }

    @Override
    public void checkAccess(Path path, AccessMode... modes) throws IOException {
        real.provider().checkAccess(bare(path), modes);
    }

    @Override
    public <V extends FileAttributeView> V getFileAttributeView(Path path, Class<V> type, LinkOption... options) {
        return real.provider().getFileAttributeView(bare(path), type, options);
    }

    @Override
    public <A extends BasicFileAttributes> A readAttributes(Path path, Class<A> type, LinkOption... options)
            throws IOException {
        return real.provider().readAttributes(bare(path), type, options);
    }

    @Override
    public Map<String, Object> readAttributes(Path path, String names, LinkOption... options) throws IOException {
        return real.provider().readAttributes(bare(path), names, options);
    }

    @Override
    public void setAttribute(Path path, String name, Object value, LinkOption... options) throws IOException {
        real.provider().setAttribute(bare(path), name, value, options);
    }

    @Override
    public String getScheme() {
        return "faulty";
    }

    @Override
    public FileSystem newFileSystem(URI uri, Map<String, ?> environment) {
        throw new UnsupportedOperationException();
    }

    @Override
    public FileSystem getFileSystem(URI uri) {
        return faulty;
    }

    @Override
    public Path getPath(URI uri) {
        throw new UnsupportedOperationException();
    }

    /** A file that is written; a write that fails has written half. */
    private final class Channel implements SeekableByteChannel {

        private final SeekableByteChannel file;

        Channel(SeekableByteChannel file) {
            this.file = file;
        }

        @Override
        public int write(ByteBuffer bytes) throws IOException {
            if (failsNow("write")) {
                file.write(bytes.slice(bytes.position(), bytes.remaining() / 2));
                fail();
            }
            return file.write(bytes);
        }

        @Override
        public int read(ByteBuffer into) throws IOException {
            return file.read(into);
        }

        @Override
        public long position() throws IOException {
            return file.position();
        }

        @Override
        public SeekableByteChannel position(long place) throws IOException {
            file.position(place);
            return this;
        }

        @Override
        public long size() throws IOException {
            return file.size();
        }

        @Override
        public SeekableByteChannel truncate(long size) throws IOException {
            file.truncate(size);
            return this;
        }

        @Override
        public boolean isOpen() {
            return file.isOpen();
        }

        @Override
        public void close() throws IOException {
            file.close();
        }
    }

    /** The file system that paths on this disk name as theirs. */
    private final class Faulty extends FileSystem {

        @Override
        public FileSystemProvider provider() {
            return FaultyDisk.this;
        }

        @Override
        public Path getPath(String first, String... more) {
            return wrapped(real.getPath(first, more));
        }

        @Override
        public void close() {
            throw new UnsupportedOperationException();
        }

        @Override
        public boolean isOpen() {
            return true;
        }

        @Override
        public boolean isReadOnly() {
            return false;
        }

        @Override
        public String getSeparator() {
            return real.getSeparator();
        }

        @Override
        public Iterable<Path> getRootDirectories() {
            return StreamSupport.stream(real.getRootDirectories().spliterator(), false).map(FaultyDisk.this::wrapped)
                .toList();
        }

        @Override
        public Iterable<FileStore> getFileStores() {
            return real.getFileStores();
        }

        @Override
        public Set<String> supportedFileAttributeViews() {
            return real.supportedFileAttributeViews();
        }

        @Override
        public PathMatcher getPathMatcher(String pattern) {
            return path -> real.getPathMatcher(pattern).matches(bare(path));
        }

        @Override
        public UserPrincipalLookupService getUserPrincipalLookupService() {
            return real.getUserPrincipalLookupService();
        }

        @Override
        public WatchService newWatchService() throws IOException {
            return real.newWatchService();
        }
    }
}
