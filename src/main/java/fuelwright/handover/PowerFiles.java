package fuelwright.handover;

import fuelwright.power.PowerCurve;
import fuelwright.power.PullComparison;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Power curves and their comparison as CSV files. */
public final class PowerFiles {

    public static final String CURVES = "power.csv";
    public static final String COMPARISON = "power-compared.csv";
    /** Every file that may be written. */
    public static final List<String> NAMES = List.of(CURVES, COMPARISON);

    private PowerFiles() {}

    /**
     * The files by name.
     *
     * @param curves curves of each ride, rides in order
     * @param comparisons of the first ride's first pull with that of each other ride
     */
    public static Map<String, byte[]> of(List<List<PowerCurve>> curves, List<PullComparison> comparisons) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(CURVES, bytes(curves(curves)));
        if (!comparisons.isEmpty()) {
            files.put(COMPARISON, bytes(comparisons(comparisons)));
        }
        return files;
    }

    private static String curves(List<List<PowerCurve>> rides) {
        StringBuilder text = new StringBuilder();
        for (List<PowerCurve> curves : rides) {
            for (int i = 0; i < curves.size(); i++) {
                PowerCurve curve = curves.get(i);
                text.append("# ")
                        .append(name(curve))
                        .append(", pull ")
                        .append(i + 1)
                        .append(": ");
                text.append(curve.source().words()).append('\n');
                curve.remarks().forEach(r -> text.append("# ").append(r).append('\n'));
            }
        }
        text.append(
                "ride,pull,engine speed [rpm],power [kW],power uncertainty [kW],torque [N·m],torque uncertainty [N·m]\n");
        for (List<PowerCurve> curves : rides) {
            for (int i = 0; i < curves.size(); i++) {
                String start = quoted(name(curves.get(i))) + "," + (i + 1) + ",";
                curves.get(i)
                        .points()
                        .forEach(p -> text.append(start)
                                .append(line(
                                        "%.0f,%.2f,%.2f,%.2f,%.2f",
                                        p.rpm(), p.powerKw(), p.errorKw(), p.torqueNm(), p.torqueErrorNm())));
            }
        }
        return text.toString();
    }

    private static String comparisons(List<PullComparison> comparisons) {
        StringBuilder text = new StringBuilder("before,after,engine speed [rpm],gain [kW],uncertainty [kW],gain [%]\n");
        for (PullComparison c : comparisons) {
            String start = quoted(name(c.before())) + "," + quoted(name(c.after())) + ",";
            c.gains()
                    .forEach(g -> text.append(start)
                            .append(line("%.0f,%.2f,%.2f,%.2f", g.rpm(), g.kw(), g.errorKw(), g.percent())));
        }
        return text.toString();
    }

    private static String line(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures) + "\n";
    }

    private static String name(PowerCurve curve) {
        return curve.pull().ride().name().replaceAll("\\p{Cntrl}", " ");
    }

    /** In quotes; what a spreadsheet would take for a formula gets an apostrophe before it. */
    private static String quoted(String text) {
        boolean formula = !text.isEmpty() && "=+-@".indexOf(text.charAt(0)) >= 0;
        return '"' + (formula ? "'" : "") + text.replace("\"", "\"\"") + '"';
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
