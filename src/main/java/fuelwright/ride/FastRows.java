package fuelwright.ride;

import java.io.IOException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.function.IntConsumer;

/**
 * All rows, piece by piece on a few threads: lines are counted first, so that every piece knows where its rows go and no column is
 * copied. A line belongs to the piece that it starts in. The result doesn't depend on the number of threads.
 */
final class FastRows {

    static final int PIECE = 1 << 20;

    /** Beyond a piece, as far as a line that isn't too long can reach (65,536 characters of four bytes). */
    private static final int TAIL = 4 * 65_536 + 16;

    private final Encoded encoded;
    private final Layout layout;
    private final DoubleConsumer progress;
    private final BooleanSupplier cancelled;
    private final int pieceSize;
    private final int pieces;
    private final int[] lineCounts;
    private final int[] firstLines;
    private final Piece[] results;
    private final AtomicInteger done = new AtomicInteger();
    private double[][] columns = new double[0][];

    private FastRows(
            Encoded encoded, Layout layout, DoubleConsumer progress, BooleanSupplier cancelled, int pieceSize) {
        this.encoded = encoded;
        this.layout = layout;
        this.progress = progress;
        this.cancelled = cancelled;
        this.pieceSize = pieceSize;
        long length = encoded.bytes().size() - layout.dataStart();
        pieces = (int) Math.max(1, (length + pieceSize - 1) / pieceSize);
        lineCounts = new int[pieces];
        firstLines = new int[pieces];
        results = new Piece[pieces];
    }

    private record Piece(int rows, RowLog log, LineMap lines, IntList restarts) {}

    static RawTable read(Encoded encoded, Layout layout, DoubleConsumer progress, BooleanSupplier cancelled)
            throws IOException {
        int threads = Math.min(4, Runtime.getRuntime().availableProcessors());
        return read(encoded, layout, progress, cancelled, PIECE, threads);
    }

    static RawTable read(
            Encoded encoded,
            Layout layout,
            DoubleConsumer progress,
            BooleanSupplier cancelled,
            int pieceSize,
            int threads)
            throws IOException {
        if (!FastLine.canRead(layout)) {
            return ReferenceRows.read(encoded, layout, progress, cancelled);
        }
        return new FastRows(encoded, layout, progress, cancelled, pieceSize).read(threads);
    }

    private RawTable read(int threads) throws IOException {
        inParallel(threads, (piece, buffer) -> lineCounts[piece] = countLines(piece, buffer));
        long lines = 0;
        for (int i = 0; i < pieces; i++) {
            firstLines[i] = (int) lines;
            lines += lineCounts[i];
        }
        long bytes = lines * layout.columns() * Double.BYTES;
        if (lines > Integer.MAX_VALUE - 16 || bytes > Runtime.getRuntime().maxMemory() / 10 * 9) {
            throw new IOException(lines + " lines need " + bytes / 1_000_000 + " MB of memory");
        }
        columns = new double[layout.columns()][(int) lines];
        inParallel(threads, (piece, buffer) -> results[piece] = parse(piece, buffer));
        return joined();
    }

    private RawTable joined() {
        RowLog log = new RowLog();
        LineMap lines = new LineMap();
        IntList restarts = new IntList();
        int rows = 0;
        for (int i = 0; i < pieces && results[i] != null; i++) {
            Piece piece = results[i];
            if (firstLines[i] != rows) {
                for (double[] column : columns) {
                    System.arraycopy(column, firstLines[i], column, rows, piece.rows());
                }
            }
            log.addAll(piece.log());
            lines.addAll(piece.lines(), rows);
            for (int r = 0; r < piece.restarts().size(); r++) {
                restarts.add(piece.restarts().get(r) + rows);
            }
            rows += piece.rows();
        }
        return new RawTable(rows, columns, lines, restarts, log);
    }

    /** Work on a piece with a thread's own buffer. */
    private interface PieceWork {
        void run(int piece, Buffer buffer) throws IOException;
    }

    /** A thread's bytes, grown as needed. */
    private static final class Buffer {
        private byte[] bytes = new byte[0];

        byte[] atLeast(int length) {
            if (bytes.length < length) {
                bytes = new byte[length];
            }
            return bytes;
        }
    }

    private void inParallel(int threads, PieceWork work) throws IOException {
        AtomicInteger next = new AtomicInteger();
        AtomicReference<IOException> failed = new AtomicReference<>();
        IntConsumer loop = thread -> {
            Buffer buffer = new Buffer();
            for (int piece = next.getAndIncrement();
                    piece < pieces && failed.get() == null && !cancelled.getAsBoolean();
                    piece = next.getAndIncrement()) {
                try {
                    work.run(piece, buffer);
                } catch (IOException e) {
                    failed.set(e);
                }
                progress.accept(done.incrementAndGet() / (2.0 * pieces));
            }
        };
        Thread[] helpers = new Thread[Math.max(0, Math.min(threads, pieces / 2) - 1)];
        for (int t = 0; t < helpers.length; t++) {
            int number = t + 1;
            helpers[t] = new Thread(() -> loop.accept(number), "ride-reader-" + number);
            helpers[t].setDaemon(true);
            helpers[t].start();
        }
        loop.accept(0);
        for (Thread helper : helpers) {
            join(helper);
        }
        if (failed.get() != null) {
            throw failed.get();
        }
    }

    private static void join(Thread helper) throws IOException {
        try {
            helper.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
    }

    private long from(int piece) {
        return layout.dataStart() + (long) piece * pieceSize;
    }

    private long to(int piece) {
        return Math.min(from(piece) + pieceSize, encoded.bytes().size());
    }

    /** Lines that start in the piece: a line starts at the first byte and after every line feed but a last one. */
    private int countLines(int piece, Buffer buffer) throws IOException {
        long from = from(piece) - (piece == 0 ? 0 : 1);
        int length = (int) (to(piece) - 1 - from);
        if (length < 0) {
            return 0;
        }
        byte[] bytes = buffer.atLeast(length);
        int read = encoded.bytes().read(from, bytes, 0, length);
        int count = piece == 0 ? 1 : 0;
        for (int i = 0; i < read; i++) {
            count += bytes[i] == '\n' ? 1 : 0;
        }
        return count;
    }

    private Piece parse(int piece, Buffer buffer) throws IOException {
        long base = from(piece) - (piece == 0 ? 0 : 1);
        int nominal = (int) (to(piece) - base);
        int length = (int) Math.min(nominal + TAIL, encoded.bytes().size() - base);
        byte[] bytes = buffer.atLeast(length + 1);
        int read = encoded.bytes().read(base, bytes, 0, length);
        boolean fileEnds = base + read >= encoded.bytes().size();
        bytes[read] = '\n';
        RowLog log = new RowLog();
        RowReader slow = new RowReader(layout, log, false);
        FastLine fast = new FastLine(layout, slow);
        LineMap lines = new LineMap();
        IntList restarts = new IntList();
        double[] row = new double[layout.columns()];
        int rowsFrom = firstLines[piece];
        int line = layout.dataLine() + rowsFrom;
        int rows = 0;
        int p = piece == 0 ? 0 : afterLineFeed(bytes, 0, read);
        while (p < nominal && p < read) {
            boolean isRow = fast.read(bytes, p, columns, rowsFrom + rows) == FastLine.Outcome.ROW;
            int end = isRow ? fast.end() : afterLineFeed(bytes, p, read) - 1;
            if (!isRow) {
                isRow = slowly(slow, bytes, p, end, end < read || !fileEnds, line, row);
                for (int c = 0; isRow && c < row.length; c++) {
                    columns[c][rowsFrom + rows] = row[c];
                }
                if (slow.takeRestart()) {
                    restarts.add(rows);
                }
            }
            if (isRow) {
                lines.add(rows, line);
                rows++;
            }
            line++;
            p = end + 1;
        }
        return new Piece(rows, log, lines, restarts);
    }

    private boolean slowly(RowReader slow, byte[] bytes, int from, int end, boolean ended, int line, double[] row) {
        int to = end;
        while (to > from && bytes[to - 1] == '\r') {
            to--;
        }
        String text = new String(bytes, from, to - from, layout.dialect().charset());
        return slow.read(text, line, ended, row);
    }

    /** The position after the next line feed, or after the end. */
    private static int afterLineFeed(byte[] bytes, int from, int end) {
        int p = from;
        while (p < end && bytes[p] != '\n') {
            p++;
        }
        return p + 1;
    }
}
