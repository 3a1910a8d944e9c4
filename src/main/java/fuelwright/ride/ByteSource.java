package fuelwright.ride;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Bytes by position, from memory or from a file. Safe for several threads. */
interface ByteSource extends Closeable {

    long size();

    /** Reads {@code length} bytes from {@code position}, fewer only at the end; returns how many. */
    int read(long position, byte[] into, int offset, int length) throws IOException;

    @Override
    default void close() throws IOException {}

    /** The first bytes, at most {@code length}. */
    default byte[] bytes(long position, int length) throws IOException {
        byte[] bytes = new byte[(int) Math.max(0, Math.min(length, size() - position))];
        int read = read(position, bytes, 0, bytes.length);
        return read == bytes.length ? bytes : java.util.Arrays.copyOf(bytes, read);
    }

    static ByteSource of(byte[] content) {
        return new ByteSource() {
            @Override
            public long size() {
                return content.length;
            }

            @Override
            public int read(long position, byte[] into, int offset, int length) {
                int count = (int) Math.max(0, Math.min(length, content.length - position));
                System.arraycopy(content, (int) Math.min(position, content.length), into, offset, count);
                return count;
            }
        };
    }

    static ByteSource of(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        long size = channel.size();
        return new ByteSource() {
            @Override
            public long size() {
                return size;
            }

            @Override
            public int read(long position, byte[] into, int offset, int length) throws IOException {
                int done = 0;
                while (done < length) {
                    int read = channel.read(ByteBuffer.wrap(into, offset + done, length - done), position + done);
                    if (read < 0) {
                        break;
                    }
                    done += read;
                }
                return done;
            }

            @Override
            public void close() throws IOException {
                channel.close();
            }
        };
    }
}
