package fuelwright.cli;

import fuelwright.estimate.TipIn;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What is said of the lean and rich moments as the throttle opens. */
final class TipInWords {

    private TipInWords() {}

    static List<String> lines(TipIn tipIn) {
        List<String> lines = new ArrayList<>();
        long clear = tipIn.bins().stream().filter(TipIn.Bin::isClear).count();
        lines.add("Tip-in: " + tipIn.openings() + " openings judged, " + tipIn.leftOut() + " left out"
                + (tipIn.openings() > 0 && clear == 0 ? "; neither lean nor rich beyond doubt" : ""));
        for (TipIn.Bin bin : tipIn.bins()) {
            if (bin.isClear()) {
                lines.add(String.format(
                        Locale.ROOT,
                        "Tip-in at %s from %s: %.1f %% %s ±%.1f, worst %s%.1f %%, %s (accel enrichment, not table)",
                        bin.rateWords(),
                        bin.speedWords(),
                        Math.abs(bin.meanPercent()),
                        bin.meanPercent() > 0 ? "lean" : "rich",
                        bin.uncertaintyPercent(),
                        bin.atLimit() > 0 ? "beyond " : "",
                        Math.abs(bin.worstPercent()),
                        bin.openings() == 1 ? "once" : bin.openings() + " openings"));
            }
        }
        return lines;
    }

    static Map<String, Object> asMap(TipIn tipIn) {
        List<Object> bins = new ArrayList<>();
        for (TipIn.Bin bin : tipIn.bins()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("openingFromPercentPerS", Json.rounded(bin.rateFrom()));
            one.put("openingToPercentPerS", Json.rounded(bin.rateTo()));
            one.put("speedFromRpm", Json.rounded(bin.speedFromRpm()));
            one.put("speedToRpm", Json.rounded(bin.speedToRpm()));
            one.put("openings", bin.openings());
            one.put("meanPercent", Json.rounded(bin.meanPercent()));
            one.put("uncertaintyPercent", Json.rounded(bin.uncertaintyPercent()));
            one.put("worstPercent", Json.rounded(bin.worstPercent()));
            one.put("atSensorLimit", bin.atLimit());
            bins.add(one);
        }
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("openings", tipIn.openings());
        map.put("leftOut", tipIn.leftOut());
        map.put("bins", bins);
        return map;
    }
}
