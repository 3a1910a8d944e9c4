package fuelwright.ride;

import java.util.List;

/**
 * Whether two logs hold the same readings, whatever their files are called and however they are written: all rows of the shorter one are the
 * first of the longer one. Engine speed, throttle, every mixture and trim that both have, and the time are compared.
 */
final class SameReadings {

    /** Of logs of different lengths fewer rows may agree by chance. */
    private static final int LEAST_ROWS = 50;

    private static final double TOLERANCE = 1e-6;
    private static final List<Role> COMPARED =
            List.of(Role.ENGINE_SPEED, Role.THROTTLE, Role.SHORT_TRIM, Role.LONG_TRIM);

    private SameReadings() {}

    static boolean of(Ride one, Ride other) {
        if (!one.fingerprint().isEmpty() && one.fingerprint().equals(other.fingerprint())) {
            return true;
        }
        int rows = Math.min(one.size(), other.size());
        if (one.size() != other.size() && rows < LEAST_ROWS
                || one.channel(Role.ENGINE_SPEED).isEmpty()
                || other.channel(Role.ENGINE_SPEED).isEmpty()) {
            return false;
        }
        for (Role role : COMPARED) {
            if (!same(
                    one.column(role).stream().toList(),
                    other.column(role).stream().toList(),
                    rows)) {
                return false;
            }
        }
        return same(mixtures(one), mixtures(other), rows) && same(one.timeS(), other.timeS(), rows);
    }

    private static List<Column> mixtures(Ride ride) {
        return ride.mixtures().stream().map(Channel::values).toList();
    }

    private static boolean same(List<Column> ones, List<Column> others, int rows) {
        for (int i = 0; i < Math.min(ones.size(), others.size()); i++) {
            if (!same(ones.get(i), others.get(i), rows)) {
                return false;
            }
        }
        return true;
    }

    private static boolean same(Column one, Column other, int rows) {
        for (int row = 0; row < rows; row++) {
            boolean both = one.has(row) && other.has(row);
            if (one.has(row) != other.has(row)
                    || both && Math.abs(one.at(row) - other.at(row)) > TOLERANCE * Math.max(1, Math.abs(one.at(row)))) {
                return false;
            }
        }
        return true;
    }
}
