package outwind.scan.file;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import outwind.scan.bytes.ScanBytes;

/** Goes through the binary part of a .ply file from front to back. */
final class PlyCursor {

    private static final int WINDOW = 64 * 1024;

    private final ScanBytes file;
    private final ByteBuffer window;
    private long windowBegin;
    private long at;

    PlyCursor(ScanBytes file, long from, ByteOrder order) {
        this.file = file;
        at = from;
        windowBegin = from;
        window = ByteBuffer.allocate(WINDOW).order(order).limit(0);
    }

    /** Where the next number begins (bytes). */
    long at() {
        return at;
    }

    /** Passes all things of one kind over. */
    void pass(PlyElement element) throws IOException {
        if (element.isEven()) {
            pass(element.count(), element.leastBytes());
            return;
        }
        for (long i = 0; i < element.count(); i++) {
            for (PlyElement.Property property : element.properties()) {
                pass(property);
            }
        }
    }

    /** Passes a number or a list over. */
    void pass(PlyElement.Property property) throws IOException {
        if (property.isList()) {
            double length = number(property.length().get());
            if (length < 0) {
                // A list shorter than nothing: from here on nothing can be read.
                throw new EOFException();
            }
            pass((long) length, property.type().bytes());
        } else {
            pass(1, property.type().bytes());
        }
    }

    /** @throws EOFException if the file has fewer bytes */
    double number(PlyType type) throws IOException {
        require(1, type.bytes());
        if (at < windowBegin || at + type.bytes() > windowBegin + window.limit()) {
            windowBegin = at;
            window.limit(file.read(at, at + WINDOW, window.array()));
        }
        double number = type.at((int) (at - windowBegin), window);
        at += type.bytes();
        return number;
    }

    private void pass(long count, int bytes) throws EOFException {
        require(count, bytes);
        at += count * bytes;
    }

    private void require(long count, int bytes) throws EOFException {
        if (bytes > 0 && count > (file.size() - at) / bytes) {
            throw new EOFException();
        }
    }
}
