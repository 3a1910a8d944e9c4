package fuelwright.table;

/** Looks at a whole table for figures that belong to another quantity or unit. */
final class Plausibility {

    private Plausibility() {}

    /** Beyond this a figure is a slip, whatever the engine. */
    private static double mostOf(Quantity quantity) {
        return switch (quantity) {
            case VOLUMETRIC_EFFICIENCY, FUEL_TRIM, CHANGE, SHORTFALL -> 1000;
            case INJECTOR_PULSE -> 200;
            case MULTIPLIER -> 100;
            case LAMBDA, AFR -> 1000;
            default -> Double.POSITIVE_INFINITY;
        };
    }

    static void check(Table table, Problems problems) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int cell = 0; cell < table.cells(); cell++) {
            least = Math.min(least, table.at(cell));
            most = Math.max(most, table.at(cell));
        }
        if (Math.max(-least, most) > mostOf(table.quantity())) {
            problems.error(
                    0,
                    0,
                    "A cell holds more than " + Numerals.shortest(mostOf(table.quantity())) + " "
                            + table.quantity().unit() + ", which no "
                            + table.quantity().words() + " can be",
                    "Correct the cell, or the quantity above the grid");
            return;
        }
        String range = "from " + Numerals.shortest(least) + " to " + Numerals.shortest(most);
        switch (table.quantity()) {
            case LAMBDA:
                if (most > 5) {
                    problems.error(
                            0,
                            0,
                            "Lambda " + range + " can't be a target",
                            "If it is a ratio, write # quantity: AFR [1]");
                }
                break;
            case AFR:
                if (most < 3) {
                    problems.error(
                            0,
                            0,
                            "AFR " + range + " can't be a target",
                            "If it is lambda, write # quantity: lambda [1]");
                }
                break;
            case VOLUMETRIC_EFFICIENCY:
                if (most < 3) {
                    problems.warning(
                            0,
                            0,
                            "Volumetric efficiency " + range + " % looks like a fraction of 1",
                            "If it is, write # quantity: volumetric efficiency [1]");
                }
                break;
            default:
                break;
        }
    }
}
