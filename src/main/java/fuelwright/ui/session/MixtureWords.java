package fuelwright.ui.session;

import fuelwright.safety.Caution;
import fuelwright.ui.theme.Figures;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A caution's sentences with their mixtures as the user wants to see them. What is about the scale itself stays as it is. */
public final class MixtureWords {

    private static final Pattern LAMBDA =
            Pattern.compile("\\b(lambda |limit |target of |Leanest: )([01]\\.\\d{1,4})(?! ?[%°]| (s|V|kPa|lambda)\\b)");

    private static final Set<String> ABOUT_THE_SCALE =
            Set.of("mixture-upside-down", "mixture-unit", "target-scale", "limits-changed", "ratio-untold");

    private MixtureWords() {}

    /** The caution as it is shown wherever the window says it. */
    public static Caution in(Caution caution, Mixture as) {
        return as.afr() && !ABOUT_THE_SCALE.contains(caution.rule())
                ? new Caution(
                        caution.rule(),
                        caution.level(),
                        caution.title(),
                        of(caution, caution.what(), as),
                        of(caution, caution.todo(), as),
                        caution.cells(),
                        caution.moments(),
                        caution.about())
                : caution;
    }

    private static String of(Caution caution, String sentence, Mixture as) {
        return LAMBDA.matcher(sentence).replaceAll(m -> Matcher.quoteReplacement(replaced(caution, m, as)));
    }

    /** With as many decimals as tell what the lambda told: a figure just beyond its limit stays beyond it. */
    private static String replaced(Caution caution, MatchResult m, Mixture as) {
        String before = m.group(1).equals("lambda ") ? "AFR " : m.group(1);
        int decimals = Math.max(as.decimals(), m.group(2).length() - 3);
        return before + Figures.plain(exact(caution, m.group(2)) * as.scale(), decimals);
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
