package fuelwright.simulated;

/** Figures with a set number of decimals, the same in every locale, and never "-0". */
final class FixedPoint {

    private FixedPoint() {}

    /** @param decimals 0…3 */
    static void append(StringBuilder text, double value, int decimals) {
        int scale = decimals == 0 ? 1 : decimals == 1 ? 10 : decimals == 2 ? 100 : 1000;
        long scaled = Math.round(Math.abs(value) * scale);
        text.append(value < 0 && scaled != 0 ? "-" : "").append(scaled / scale);
        if (decimals > 0) {
            String fraction = Long.toString(scaled % scale);
            text.append('.').append("0".repeat(decimals - fraction.length())).append(fraction);
        }
    }
}
