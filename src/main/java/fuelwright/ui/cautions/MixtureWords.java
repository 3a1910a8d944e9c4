package fuelwright.ui.cautions;

import fuelwright.safety.Caution;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.theme.Figures;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A caution's sentences with their mixtures as the user wants to see them. What is about the scale itself stays as it is. */
final class MixtureWords {

    private static final Pattern LAMBDA =
            Pattern.compile("\\b(lambda |limit |target of |Leanest: )([01]\\.\\d{2,4})(?! ?[%°]| (s|V|kPa|lambda)\\b)");

    private static final Set<String> ABOUT_THE_SCALE =
            Set.of("mixture-upside-down", "mixture-unit", "target-scale", "limits-changed", "ratio-untold");

    private MixtureWords() {}

    static String of(Caution caution, String sentence, Mixture as) {
        if (!as.afr() || ABOUT_THE_SCALE.contains(caution.rule())) {
            return sentence;
        }
        return LAMBDA.matcher(sentence).replaceAll(m -> {
            String figure = as.figure(exact(caution, m.group(2)));
            return Matcher.quoteReplacement(m.group(1).equals("lambda ") ? "AFR " + figure : m.group(1) + figure);
        });
    }

    /** The lambda that a rounded figure of a caution stands for: that of one of its moments where it is one. */
    private static double exact(Caution caution, String rounded) {
        int decimals = rounded.length() - rounded.indexOf('.') - 1;
        return caution.moments().stream()
                .mapToDouble(Caution.Moment::worst)
                .filter(worst -> Figures.plain(worst, decimals).equals(rounded))
                .findFirst()
                .orElse(Double.parseDouble(rounded));
    }
}
