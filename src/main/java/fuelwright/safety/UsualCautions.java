package fuelwright.safety;

import java.util.List;

/** What the trade says before anyone tunes an engine: shown in the window, in the report and in the README, word for word. */
public final class UsualCautions {

    private static final List<String> SENTENCES = List.of(
            "The figures of the engine's builder come first; where they differ from this program's, follow the builder.",
            "Make full-load runs on a dynamometer or a closed course, never on a public road.",
            "Never watch a screen or handle a computer while riding: log, stop, then look.",
            "Close the throttle at once when the engine knocks, misfires or the mixture goes lean under load.",
            "Exhaust gas holds carbon monoxide, which kills without warning: run engines outdoors or with the exhaust extracted.",
            "Exhaust, engine and coolant burn skin, and fuel near them burns too: let parts cool, and keep an extinguisher at hand.",
            "Tie the machine down and keep hands, hair and clothes away from wheels, chains and fans on a dynamometer.",
            "Changed fuelling may break emission, noise and road laws, and licence or warranty conditions: know those of your place.",
            "Where the law asks for a licensed workshop or an inspection, have it done there.",
            "One sensor sees a mean of its cylinders, and no program sees an engine: read the plugs, listen, and stop when in doubt.",
            "Enter a corrected table with care, check what was typed, and ride it gently before loading the engine.");

    private UsualCautions() {}

    /** The sentences, in the order in which they are shown. */
    public static List<String> sentences() {
        return SENTENCES;
    }
}
