package fuelwright.ride;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * The lines of a log that its dialect is decided by: the first ones, and some from further on (a wideband that is still heating
 * when the log starts shows its figures later).
 *
 * @param head the first lines of the file, in order
 * @param starts where in the bytes each line of {@code head} starts; one more for the line after
 * @param later lines from further on
 */
record Sample(List<String> head, List<Long> starts, List<String> later) {

    private static final int HEAD_LINES = 1000;
    private static final int LONGEST_LINE = 64 * 1024;
    private static final int LATER_BYTES = 24 * 1024;
    private static final int LATER_PLACES = 6;

    static Sample of(Encoded encoded) throws IOException {
        byte[] bytes = encoded.bytes().bytes(encoded.start(), Encoded.LONGEST_FIRST_LINE);
        boolean whole = encoded.start() + bytes.length >= encoded.bytes().size();
        List<String> head = new ArrayList<>();
        List<Long> starts = new ArrayList<>();
        int at = 0;
        while (at < bytes.length && head.size() < HEAD_LINES && at < Encoded.HEAD) {
            int end = lineEnd(bytes, at);
            if (end == bytes.length && !whole && !head.isEmpty()) {
                break;
            }
            starts.add(encoded.start() + at);
            head.add(text(bytes, at, end, encoded));
            at = end + 1;
        }
        starts.add(encoded.start() + Math.min(at, bytes.length));
        List<String> later = new ArrayList<>();
        long rest = encoded.bytes().size() - starts.get(starts.size() - 1);
        for (int p = 1; p <= LATER_PLACES && rest > LATER_BYTES; p++) {
            long from = starts.get(starts.size() - 1) + (rest - LATER_BYTES) / LATER_PLACES * p;
            addLines(encoded.bytes().bytes(from, LATER_BYTES), encoded, later);
        }
        return new Sample(List.copyOf(head), List.copyOf(starts), List.copyOf(later));
    }

    private static void addLines(byte[] bytes, Encoded encoded, List<String> into) {
        int at = lineEnd(bytes, 0) + 1;
        while (at < bytes.length) {
            int end = lineEnd(bytes, at);
            if (end == bytes.length) {
                return;
            }
            into.add(text(bytes, at, end, encoded));
            at = end + 1;
        }
    }

    private static int lineEnd(byte[] bytes, int from) {
        int at = from;
        while (at < bytes.length && bytes[at] != '\n') {
            at++;
        }
        return at;
    }

    private static String text(byte[] bytes, int from, int end, Encoded encoded) {
        int to = end;
        while (to > from && bytes[to - 1] == '\r') {
            to--;
        }
        return new String(bytes, from, Math.min(to - from, LONGEST_LINE), encoded.charset());
    }
}
