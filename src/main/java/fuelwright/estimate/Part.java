package fuelwright.estimate;

import java.util.List;

/** Parts of the estimate that can be switched off, to measure what each is worth. The program itself always uses all. */
enum Part {
    /** Readings are believed where they were logged: no delay, no lag. */
    DELAY_AND_LAG(Nuisance.FIXED_DELAY, Nuisance.CYCLES, Nuisance.GAS, Nuisance.LAG),
    /** Fuelling that moves shifts no mixture. */
    WALL_FILM(Nuisance.WALL_FILM, Nuisance.OPENING, Nuisance.CLOSING),
    /** One bad second counts in full. */
    ROBUSTNESS,
    /** Many readings in one spot outvote everything. */
    CROWDING,
    /** Smoothness is the usual one instead of the one that the rides speak for. */
    CHOSEN_SMOOTHNESS,
    /** What stands out in the old table says nothing. */
    UNEVENNESS,
    /** Every cell stands alone. */
    NEIGHBOURS;

    private final List<Nuisance> nuisances;

    Part(Nuisance... nuisances) {
        this.nuisances = List.of(nuisances);
    }

    /** The nuisances that are held at 0 without this part. */
    List<Nuisance> nuisances() {
        return nuisances;
    }
}
