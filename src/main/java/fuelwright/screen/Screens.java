package fuelwright.screen;

import fuelwright.ride.Ride;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Decides for each row of a ride whether it is evidence. Every screen marks rows by itself ({@link RowMarks}); a row keeps the first reason
 * in the order of {@link Screen}. What each screen marked is kept, so that other settings do again only the screens that they change: a bit a
 * row and screen. O(rows). Thread-safe.
 */
public final class Screens {

    private final Ride ride;
    private final Axis speed;
    private final Axis load;
    private final Optional<Table> targetLambda;
    private final LoggedTrims trims;
    private final Map<Screen, Kept> kept = new EnumMap<>(Screen.class);

    /** What a screen marked, and the thresholds that it did so by. */
    private record Kept(List<Double> by, Marks marks) {}

    private Screens(Ride ride, Axis speed, Axis load, Optional<Table> targetLambda) {
        this.ride = ride;
        this.speed = speed;
        this.load = load;
        this.targetLambda = targetLambda;
        this.trims = LoggedTrims.of(ride);
    }

    /**
     * Nothing is looked at yet.
     *
     * @param speed engine-speed axis of the table that the ride was made with
     * @param load its load axis
     * @param targetLambda target, as lambda; where it is known a closed loop whose trims aren't in the ride is looked for
     */
    public static Screens of(Ride ride, Axis speed, Axis load, Optional<Table> targetLambda) {
        return new Screens(ride, speed, load, targetLambda);
    }

    /** All at once, with no target. */
    public static ScreenedRide apply(Ride ride, ScreenSettings settings, Axis speed, Axis load) {
        return apply(ride, settings, speed, load, Optional.empty(), () -> {});
    }

    /**
     * All at once.
     *
     * @param targetLambda target, as lambda
     * @param stillWanted as for {@link #screened}
     */
    public static ScreenedRide apply(
            Ride ride,
            ScreenSettings settings,
            Axis speed,
            Axis load,
            Optional<Table> targetLambda,
            Runnable stillWanted) {
        return of(ride, speed, load, targetLambda).screened(settings, stillWanted);
    }

    /**
     * The ride with these settings.
     *
     * @param stillWanted called now and then, by whatever thread; whatever it throws ends the work
     */
    public synchronized ScreenedRide screened(ScreenSettings settings, Runnable stillWanted) {
        stillWanted.run();
        List<Screen> missing = Arrays.stream(Screen.values())
                .filter(screen -> screen != Screen.CLOSED_LOOP_UNLOGGED && settings.isOn(screen))
                .filter(screen -> !isKept(screen, settings))
                .toList();
        Columns columns = new Columns(ride, load.kind());
        if (!missing.isEmpty()) {
            List<Marks> made = missing.parallelStream()
                    .map(screen -> RowMarks.of(screen, columns, settings, speed, load, stillWanted))
                    .toList();
            for (int i = 0; i < made.size(); i++) {
                kept.put(missing.get(i), new Kept(by(missing.get(i), settings), made.get(i)));
            }
        }
        stillWanted.run();
        byte[] reasons = reasons(settings);
        if (trims != LoggedTrims.TOLD && settings.isOn(Screen.CLOSED_LOOP_UNLOGGED)) {
            targetLambda.ifPresent(target -> markClosedLoop(columns, target, reasons));
        }
        return new ScreenedRide(ride, reasons);
    }

    private boolean isKept(Screen screen, ScreenSettings settings) {
        Kept known = kept.get(screen);
        return known != null && known.by.equals(by(screen, settings));
    }

    /** The thresholds that a screen goes by. */
    private static List<Double> by(Screen screen, ScreenSettings settings) {
        return switch (screen) {
            case NOT_RUNNING -> List.of(settings.speedAtLeastRpm());
            case TOO_COLD -> List.of(settings.coolantAtLeastC());
            case FUEL_CUT -> List.of(settings.lambdaTo());
            case AFTER_FUEL_CUT -> List.of(settings.lambdaTo(), settings.afterFuelCutS());
            case SENSOR_LIMIT -> List.of(settings.lambdaFrom(), settings.lambdaTo());
            case SENSOR_FROZEN -> List.of(settings.frozenS());
            case THROTTLE_MOVING -> List.of(settings.throttleRateAtMost());
            case SPEED_MOVING -> List.of(settings.speedRateAtMost());
            default -> List.of();
        };
    }

    /** The first reason of each row. */
    private byte[] reasons(ScreenSettings settings) {
        byte[] reasons = new byte[ride.size()];
        Arrays.fill(reasons, ScreenedRide.COUNTS);
        Screen[] on = kept.keySet().stream().filter(settings::isOn).toArray(Screen[]::new);
        Marks[] marks = Arrays.stream(on).map(screen -> kept.get(screen).marks).toArray(Marks[]::new);
        for (int word = 0; word < Marks.words(reasons.length); word++) {
            long open = -1;
            for (int s = 0; s < on.length; s++) {
                long first = marks[s].word(word) & open;
                open &= ~first;
                for (; first != 0; first &= first - 1) {
                    reasons[64 * word + Long.numberOfTrailingZeros(first)] = (byte) on[s].ordinal();
                }
            }
        }
        return reasons;
    }

    /** Where a loop works it made the mixture right, not the table. */
    private void markClosedLoop(Columns c, Table targetLambda, byte[] reasons) {
        double[] loads = c.load(targetLambda.load().kind());
        double[] asked = new double[reasons.length];
        Arrays.parallelSetAll(
                asked, i -> ClosedLoopSign.asked(targetLambda.value(c.speedRpm[i], loads[i]), c.commandedLambda[i]));
        ClosedLoopSign sign = ClosedLoopSign.of(
                c.timeS, c.speedRpm, c.load, c.lambda, asked, row -> reasons[row] == ScreenedRide.COUNTS);
        int loop = Screen.CLOSED_LOOP_UNLOGGED.ordinal();
        boolean sure = trims.proveNothing(sign);
        for (int i = 0; sure && i < asked.length; i++) {
            if (sign.worksAt(c.speedRpm[i], c.load[i], asked[i])
                    && (reasons[i] == ScreenedRide.COUNTS || reasons[i] > loop)) {
                reasons[i] = (byte) loop;
            }
        }
    }
}
