package fuelwright.ride;

import java.util.ArrayList;
import java.util.List;

/** A count of lines that remembers the first {@value #REMEMBERED} of them. */
final class Lines {

    private static final int NAMED = 5;
    private static final int REMEMBERED = 200;

    private long count;
    private final List<Integer> first = new ArrayList<>();

    void add(int line) {
        count++;
        if (first.size() < REMEMBERED) {
            first.add(line);
        }
    }

    void addAll(Lines later) {
        count += later.count;
        for (int line : later.first) {
            if (first.size() < REMEMBERED) {
                first.add(line);
            }
        }
    }

    long count() {
        return count;
    }

    int firstLine() {
        return first.isEmpty() ? 0 : first.get(0);
    }

    /** The first of them. */
    List<Integer> first() {
        return List.copyOf(first);
    }

    /** {@code "line 7"}, {@code "lines 7, 9 and 11"}, {@code "lines 7, 9, 11, 15, 21 and 80 more"}. */
    String words() {
        if (count == 1) {
            return "line " + first.get(0);
        }
        StringBuilder words = new StringBuilder("lines ");
        int named = Math.min(NAMED, first.size());
        boolean more = count > named;
        for (int i = 0; i < named; i++) {
            boolean last = i == named - 1 && !more;
            words.append(i == 0 ? "" : last ? " and " : ", ").append(first.get(i));
        }
        return more ? words + " and " + (count - named) + " more" : words.toString();
    }
}
