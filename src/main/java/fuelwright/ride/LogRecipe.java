package fuelwright.ride;

import java.util.List;
import java.util.Locale;

/**
 * What was said about a log, remembered for the next one of the same logger: it is used again where the same headings come in the same
 * order.
 *
 * @param headings as the file has them, the time column included
 * @param options what the user said
 */
public record LogRecipe(List<String> headings, RideOptions options) {

    public LogRecipe {
        headings = List.copyOf(headings);
    }

    /** Whether a log with these headings is of the same kind: the same ones in the same order, case and spaces aside. */
    public boolean fits(List<String> others) {
        if (others.size() != headings.size()) {
            return false;
        }
        for (int i = 0; i < others.size(); i++) {
            if (!plain(headings.get(i)).equals(plain(others.get(i)))) {
                return false;
            }
        }
        return true;
    }

    private static String plain(String heading) {
        return heading.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
