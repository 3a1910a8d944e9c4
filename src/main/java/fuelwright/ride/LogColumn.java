package fuelwright.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A column of a log of which nothing is known yet.
 *
 * @param heading as the file has it
 * @param values the figures as they stand in the file
 */
public record LogColumn(String heading, Column values) {

    private static final int EXAMPLES = 3;

    public LogColumn {
        Objects.requireNonNull(heading, "heading");
        Objects.requireNonNull(values, "values");
    }

    /** A channel of a ride whose meaning isn't known: its figures are as they stand in the file. */
    public static LogColumn of(Channel channel) {
        return new LogColumn(channel.heading(), channel.values());
    }

    /** Three of its figures, from its beginning, its middle and its end; fewer where it has fewer. */
    public List<Double> examples() {
        List<Double> figures = new ArrayList<>();
        int size = values.size();
        for (int i = 0; i < EXAMPLES && size > 0; i++) {
            int from = (int) ((long) (size - 1) * i / (EXAMPLES - 1));
            int at = from;
            while (at < size && !values.has(at)) {
                at++;
            }
            if (at == size) {
                at = from;
                while (at > 0 && !values.has(at)) {
                    at--;
                }
            }
            if (values.has(at)) {
                figures.add(values.at(at));
            }
        }
        return figures.size() > size ? figures.subList(0, size) : figures;
    }
}
