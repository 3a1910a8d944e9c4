package fuelwright.ui.cautions;

import fuelwright.safety.Caution;
import fuelwright.ui.session.Mixture;
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
        return LAMBDA.matcher(sentence)
                .replaceAll(m -> Matcher.quoteReplacement(
                        m.group(1).equals("lambda ")
                                ? "AFR " + as.figure(Double.parseDouble(m.group(2)))
                                : m.group(1) + as.figure(Double.parseDouble(m.group(2)))));
    }
}
