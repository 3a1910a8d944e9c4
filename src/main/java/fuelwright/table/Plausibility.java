package fuelwright.table;

/** Looks at a whole table for figures that belong to another quantity or unit. */
final class Plausibility {

    private Plausibility() {}

    static void check(Table table, Problems problems) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int cell = 0; cell < table.cells(); cell++) {
            least = Math.min(least, table.at(cell));
            most = Math.max(most, table.at(cell));
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
