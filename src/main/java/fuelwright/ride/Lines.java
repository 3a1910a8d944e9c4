package fuelwright.ride;

import java.util.ArrayList;
import java.util.List;

/** A count of lines that remembers the first few of them. */
final class Lines {

    private static final int NAMED = 5;

    private long count;
    private final List<Integer> first = new ArrayList<>();

    void add(int line) {
        count++;
        if (first.size() < NAMED) {
            first.add(line);
        }
    }

    void addAll(Lines later) {
        count += later.count;
        for (int line : later.first) {
            if (first.size() < NAMED) {
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

    /** {@code "line 7"}, {@code "lines 7, 9 and 11"}, {@code "lines 7, 9, 11, 15, 21 and 80 more"}. */
    String words() {
        if (count == 1) {
            return "line " + first.get(0);
        }
        StringBuilder words = new StringBuilder("lines ");
        boolean more = count > first.size();
        for (int i = 0; i < first.size(); i++) {
            boolean last = i == first.size() - 1 && !more;
            words.append(i == 0 ? "" : last ? " and " : ", ").append(first.get(i));
        }
        return more ? words + " and " + (count - first.size()) + " more" : words.toString();
    }
}
