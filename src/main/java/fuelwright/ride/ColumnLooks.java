package fuelwright.ride;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Which column of a log looks like what is missing: by plain words in its heading, else by its figures alone. A guess to be asked, never used
 * unasked. The bounds are common practice, no source.
 */
public final class ColumnLooks {

    /** A guess below that isn't one. */
    private static final double LEAST = 30;

    private static final double BY_NAME = 100;
    private static final int LOOKED_AT = 4000;

    private ColumnLooks() {}

    /** Figures of a column, some of them where there are many. */
    private record Looks(double[] sorted, double share, double forward, double travel) {

        static Looks of(Column values) {
            int stride = Math.max(1, values.size() / LOOKED_AT);
            double[] some = new double[values.size() / stride + 1];
            int count = 0;
            int rows = 0;
            int forward = 0;
            double travel = 0;
            for (int i = 0; i < values.size(); i += stride) {
                rows++;
                if (values.has(i)) {
                    if (count > 0) {
                        forward += values.at(i) > some[count - 1] ? 1 : 0;
                        travel += Math.abs(values.at(i) - some[count - 1]);
                    }
                    some[count++] = values.at(i);
                }
            }
            double[] sorted = Arrays.copyOf(some, count);
            Arrays.sort(sorted);
            return new Looks(
                    sorted,
                    rows == 0 ? 0 : (double) count / rows,
                    count < 2 ? 0 : (double) forward / (count - 1),
                    travel);
        }

        double at(double share) {
            return sorted[(int) Math.round(share * (sorted.length - 1))];
        }

        double range() {
            return at(1) - at(0);
        }

        boolean within(double least, double most) {
            return at(0) >= least && at(1) <= most;
        }

        /** Whether it goes up and down hardly more than from its least to its greatest, as what is warmed does. */
        boolean isSlow() {
            return travel <= 6 * range();
        }
    }

    /**
     * The column that looks most like a role; empty where none does.
     *
     * @param role what is missing; any mixture where it is one
     */
    public static Optional<LogColumn> best(Role role, List<LogColumn> columns) {
        LogColumn best = null;
        double most = 0;
        for (LogColumn column : columns) {
            double score = score(role, column);
            if (score >= LEAST && score > most) {
                best = column;
                most = score;
            }
        }
        return Optional.ofNullable(best);
    }

    /** What a column is that is said to be a role: a mixture of more than 3 is an AFR. */
    public static Role told(Role role, LogColumn column) {
        Looks looks = Looks.of(column.values());
        boolean ratio = looks.sorted().length > 0 && looks.at(0.5) > 3;
        return role.isMixture() && ratio ? Role.AFR : role;
    }

    private static double score(Role role, LogColumn column) {
        Looks looks = Looks.of(column.values());
        if (looks.sorted().length < 2 || looks.share() < 0.3 || looks.range() == 0) {
            return 0;
        }
        Heading heading = Heading.parse(column.heading(), "");
        RoleNames.Suggestion name = RoleNames.of(heading);
        boolean same = name.role() == role || name.role().isMixture() && role.isMixture();
        if (name.role() != Role.OTHER && !same) {
            return 0;
        }
        boolean otherUnit = heading.unit().isPresent() && heading.unit().get().dimension() != role.dimension();
        double figures = otherUnit ? 0 : figures(role, looks);
        return (same && figures > 0 ? BY_NAME : 0) + figures - (name.why().isEmpty() ? 0 : 20);
    }

    private static double figures(Role role, Looks looks) {
        return switch (role) {
            case TIME -> looks.forward() > 0.95 ? 60 : 0;
            case ENGINE_SPEED ->
                looks.within(0, 25_000) && looks.at(0.5) >= 700 && looks.at(1) >= 2000 && looks.forward() < 0.95
                        ? 50
                        : 0;
            case THROTTLE ->
                looks.within(-5, 110) && looks.at(0.1) <= 30 && looks.range() >= 15 && !looks.isSlow() ? 45 : 0;
            case MANIFOLD_PRESSURE -> looks.within(8, 320) && looks.range() >= 20 && !looks.isSlow() ? 40 : 0;
            case LAMBDA, AFR, EQUIVALENCE_RATIO, WIDEBAND_VOLTS -> mixture(looks);
            case COOLANT ->
                looks.within(-40, 140) && looks.at(1) >= 45 && looks.range() >= 3 && looks.isSlow() ? 40 : 0;
            default -> 0;
        };
    }

    private static double mixture(Looks looks) {
        double middle = looks.at(0.5);
        boolean lambda = middle > 0.7 && middle < 1.2 && looks.at(0.02) > 0.5;
        boolean afr = middle > 10 && middle < 17.5 && looks.at(0.02) > 8 && looks.at(0.9) < 25;
        return lambda ? 55 : afr ? 50 : 0;
    }
}
