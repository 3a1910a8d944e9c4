package fuelwright.simulated;

import fuelwright.simulated.ControlUnit.Loop;

/**
 * The control unit at work: table, fuel cut, warm-up and after-start enrichment, trims, accel enrichment. Gives the fuel of one cycle
 * as the share of a full charge that it would burn at lambda 1.
 */
final class Fuelling {
    private static final double FILM_SHARE = 0.22;
    private static final double FILM_S = 0.3;

    private final MachineTables tables;
    private final Grid table;
    private final ControlUnit unit;

    private double closedS;
    private double sinceCutS = 10;
    private double tableFuelBefore = -1;
    private double shortTrim;
    private double longTrim;
    private boolean wasLean;
    private double enrichment = 1;

    Fuelling(MachineTables tables, Grid table) {
        this.tables = tables;
        this.table = table;
        this.unit = tables.machine().unit();
    }

    double shortTrimPct() {
        return 100 * shortTrim;
    }

    double longTrimPct() {
        return 100 * longTrim;
    }

    double enrichment() {
        return enrichment;
    }

    boolean trimmed() {
        return Math.abs(shortTrim) > 1e-9 || Math.abs(longTrim) > 1e-9;
    }

    WallFilm film(double steadyFuel) {
        return new WallFilm(FILM_SHARE, FILM_S, steadyFuel);
    }

    double load(Drive drive) {
        return unit.load(drive.throttlePct, drive.pressurePa);
    }

    double target(Drive drive) {
        return tables.target().value(drive.speedRpm, load(drive));
    }

    /** @param shownLambda what the wideband shows now; only a closed loop looks at it */
    double step(Drive drive, double timeS, double shownLambda, double dtS) {
        decideCut(drive, dtS);
        double fuel = tables.fuel(table, drive.speedRpm, load(drive), drive.pressurePa);
        if (unit.loop() != Loop.OPEN) {
            closeLoop(drive, timeS, shownLambda, dtS);
        }
        enrichment = enrichment(drive.coolantC, timeS);
        double tipIn = tableFuelBefore < 0 ? 0 : Math.max(0, fuel - tableFuelBefore) / dtS;
        tableFuelBefore = fuel;
        double film = unit.tipInShare() * FILM_SHARE / (1 - FILM_SHARE) * FILM_S * Math.min(tipIn, 4);
        return drive.fuelCut ? 0 : fuel * enrichment * (1 + shortTrim) * (1 + longTrim) + film;
    }

    private void decideCut(Drive drive, double dtS) {
        double idle = tables.machine().engine().idleRpm();
        closedS = drive.throttlePct < 0.6 ? closedS + dtS : 0;
        if (drive.fuelCut) {
            drive.fuelCut = closedS > 0 && drive.speedRpm > 1.35 * idle;
        } else {
            drive.fuelCut = closedS > 0.4 && drive.speedRpm > 1.55 * idle && !drive.shifting();
        }
        sinceCutS = drive.fuelCut ? 0 : sinceCutS + dtS;
    }

    private static double enrichment(double coolantC, double timeS) {
        double cold = Math.max(0, 70 - coolantC) / 60;
        return 1 + 0.20 * StrictMath.pow(cold, 1.2) * (1 + 0.6 * StrictMath.exp(-timeS / 12));
    }

    private void closeLoop(Drive drive, double timeS, double shownLambda, double dtS) {
        double target = target(drive);
        boolean active = timeS > 30 && drive.coolantC > 60 && target > 0.975 && sinceCutS > 1.0;
        if (!active) {
            shortTrim -= shortTrim * Math.min(1, dtS / 0.3);
            shortTrim = Math.abs(shortTrim) < 5e-4 ? 0 : shortTrim;
            return;
        }
        boolean lean = shownLambda > target;
        double jump = lean == wasLean ? 0 : lean ? 0.012 : -0.012;
        wasLean = lean;
        shortTrim = clamp(shortTrim + jump + (lean ? 0.04 : -0.04) * dtS);
        longTrim = clamp(longTrim + 0.02 * shortTrim * dtS);
    }

    private static double clamp(double trim) {
        return Math.min(0.25, Math.max(-0.25, trim));
    }
}
