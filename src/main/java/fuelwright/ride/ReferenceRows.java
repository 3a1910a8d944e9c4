package fuelwright.ride;

import java.io.IOException;
import java.util.Arrays;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/** All rows through Commons CSV and {@link Double#parseDouble}, one line after the other: the way that the fast one has to equal. */
final class ReferenceRows {

    private static final int PIECE = 1 << 20;

    private ReferenceRows() {}

    static RawTable read(Encoded encoded, Layout layout, DoubleConsumer progress, BooleanSupplier cancelled)
            throws IOException {
        RowLog log = new RowLog();
        RowReader reader = new RowReader(layout, log, true);
        Rows rows = new Rows(layout.columns());
        LineMap lines = new LineMap();
        IntList restarts = new IntList();
        double[] row = new double[layout.columns()];
        byte[] buffer = new byte[(int) Math.min(PIECE, encoded.bytes().size() + 1)];
        int kept = 0;
        int number = layout.dataLine();
        long at = layout.dataStart();
        while (at < encoded.bytes().size() && !cancelled.getAsBoolean()) {
            if (kept == buffer.length) {
                buffer = Arrays.copyOf(buffer, kept * 2);
            }
            int read = encoded.bytes().read(at, buffer, kept, buffer.length - kept);
            if (read <= 0) {
                break;
            }
            at += read;
            int end = kept + read;
            boolean last = at >= encoded.bytes().size();
            int from = 0;
            for (int i = kept; i < end || last && i == end && from < end; i++) {
                boolean ended = i < end;
                if (!ended || buffer[i] == '\n') {
                    int to = i;
                    while (to > from && buffer[to - 1] == '\r') {
                        to--;
                    }
                    String line = new String(buffer, from, to - from, encoded.charset());
                    if (reader.read(line, number, ended, row)) {
                        lines.add(rows.size, number);
                        rows.add(row);
                    }
                    if (reader.takeRestart()) {
                        restarts.add(rows.size);
                    }
                    number++;
                    from = i + 1;
                }
            }
            kept = Math.max(0, end - from);
            System.arraycopy(buffer, Math.min(from, end), buffer, 0, kept);
            progress.accept((double) at / encoded.bytes().size());
        }
        return new RawTable(rows.size, rows.columns, lines, restarts, log);
    }

    private static final class Rows {
        private final double[][] columns;
        private int size;

        Rows(int width) {
            columns = new double[width][1024];
        }

        void add(double[] row) {
            for (int c = 0; c < columns.length; c++) {
                if (size == columns[c].length) {
                    columns[c] = Arrays.copyOf(columns[c], size * 2);
                }
                columns[c][size] = row[c];
            }
            size++;
        }
    }
}
