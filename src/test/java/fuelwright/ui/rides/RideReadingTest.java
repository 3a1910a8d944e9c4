package fuelwright.ui.rides;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.job.JobRide;
import fuelwright.job.PastTable;
import fuelwright.ride.Channel;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.LogForm;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.table.Table;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.unit.Unit;
import fuelwright.work.Cancellation;
import fuelwright.work.OpenRide;
import fuelwright.work.Progress;
import fuelwright.work.RecipeBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real files in the stage Rides: what was decided is shown, overruled, remembered and forgotten; second loggers; order. */
class RideReadingTest {

    @TempDir
    Path folder;

    /** Reads files as the program does, and remembers in a book of its own. */
    private final class FileServices extends FixtureServices {
        private RecipeBook book() {
            return new RecipeBook(folder.resolve("state"));
        }

        @Override
        public Loaded<Ride> readRide(Path file, RideOptions options, Progress progress, Cancellation cancellation) {
            return OpenRide.read(file, options, progress, cancellation);
        }

        @Override
        public RideOptions remembered(Path file, RideOptions said) {
            return book().find(file).map(said::or).orElse(said);
        }

        @Override
        public void remember(List<String> headings, RideOptions said) {
            book().remember(headings, said);
        }
    }

    private final Session session = new Session(new FileServices(), new SameThreadRunner());
    private final RidesModel model = new RidesModel(session);

    /** Each name is a ride of its own. */
    private Path log(String name) throws IOException {
        StringBuilder text = new StringBuilder("time [s];rpm;throttle [%];MAP;lambda\n");
        for (int i = 0; i < 200; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f;%d;%d;%.3f;0.9%d%n",
                    i / 20.0,
                    2000 + 10 * i + name.charAt(0) - 'a',
                    i / 2,
                    0.4 + i / 400.0,
                    i % 7));
            text.append(i == 50 ? "raw frame 7E8 04 41\n" : "");
        }
        return Files.writeString(folder.resolve(name), text);
    }

    private void open(Path... files) {
        session.open(List.of(files));
    }

    private Channel channel(Role role) {
        return model.ride().orElseThrow().channel(role).orElseThrow();
    }

    @Test
    void whatWasDecidedIsThereWithTheLinesThatAreNoRows() throws IOException {
        open(log("a.csv"));
        LogForm form = model.ride().orElseThrow().form().orElseThrow();
        assertEquals(';', form.delimiter());
        assertEquals('.', form.decimalSign());
        assertEquals("time [s]", form.timeHeading());
        LogForm.LeftOut left = form.leftOut().get(0);
        assertEquals("line that isn't figures", left.what());
        assertEquals(List.of(53), left.firstLines());
        assertTrue(left.bad());
    }

    @Test
    void aPictureIsMadeOfEachChannel() throws IOException {
        open(log("a.csv"));
        RidePicture picture = model.pictureProperty().get();
        assertEquals(4, picture.sparks().size());
        RidePicture.Spark speed = picture.sparks().get(0);
        assertEquals(2000, speed.least()[0]);
        assertEquals(3990, speed.most()[RidePicture.WIDTH - 1]);
        assertEquals(20, speed.rateHz(), 0.01);
    }

    @Test
    void whatIsDoubtfulComesFirst() throws IOException {
        open(log("a.csv"));
        List<Channel> order = model.channelsByDoubt(model.ride().orElseThrow());
        assertEquals(Channel.Confidence.LOOK, order.get(0).confidence());
        assertEquals("MAP", order.get(0).heading());
    }

    @Test
    void aUnitByHandIsRememberedForTheNextLogAndCanBeForgotten() throws IOException {
        open(log("a.csv"));
        assertEquals(Unit.BAR, channel(Role.MANIFOLD_PRESSURE).unit());
        model.unit(channel(Role.MANIFOLD_PRESSURE), Unit.PSI);
        assertEquals(
                0.4 * 6.894757293168361,
                channel(Role.MANIFOLD_PRESSURE).values().at(0),
                1e-9);
        assertFalse(session.reading().remembered(model.ride().orElseThrow()));
        open(log("b.csv"));
        model.selectedProperty().set(1);
        assertEquals(Unit.PSI, channel(Role.MANIFOLD_PRESSURE).unit());
        assertTrue(session.reading().remembered(model.ride().orElseThrow()));
        assertTrue(model.ride().orElseThrow().remarks().get(0).what().contains("as you said for the last log"));
        model.forget();
        assertEquals(Unit.BAR, channel(Role.MANIFOLD_PRESSURE).unit());
        open(log("c.csv"));
        model.selectedProperty().set(2);
        assertFalse(session.reading().remembered(model.ride().orElseThrow()));
    }

    /** A log whose mixture is AFR, 12.6 in every seventh row. */
    private Path afrLog(String name, String speed) throws IOException {
        StringBuilder text = new StringBuilder("time [s];" + speed + ";throttle [%];AFR\n");
        for (int i = 0; i < 200; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f;%d;%d;%.1f%n",
                    i / 20.0,
                    2000 + 10 * i + name.charAt(0) - 'a',
                    i / 2,
                    12.6 + i % 7 / 10.0));
        }
        return Files.writeString(folder.resolve(name), text);
    }

    private double lambda(int ride) {
        return model.rides().get(ride).ride().mixtures().get(0).values().at(98);
    }

    private void select(int ride) {
        model.selectedProperty().set(ride);
    }

    @Test
    void aRatioToldForARideThatIsGoneIsAskedForAgain() throws IOException {
        open(afrLog("a.csv", "rpm"));
        assertTrue(model.ratio().take("13,5"));
        assertEquals(12.6 / 13.5, lambda(0), 1e-9);
        assertEquals(13.5, session.job().displayRatio());
        model.order().remove();
        assertEquals(14.7, session.job().displayRatio(), "nobody is left who told another");
        open(afrLog("b.csv", "rpm"), afrLog("c.csv", "engine speed [rpm]"));
        for (int i = 0; i < 2; i++) {
            select(i);
            assertEquals(12.6 / 14.7, lambda(i), 1e-9);
            assertTrue(model.ride().orElseThrow().isRatioUntold());
            assertTrue(model.ratio().asked());
            assertFalse(model.ratio().said());
            assertEquals(14.7, model.ratio().value());
        }
    }

    @Test
    void aRatioHoldsForLogsWithTheSameHeadingsAndSaysSo() throws IOException {
        open(afrLog("a.csv", "rpm"));
        model.ratio().take("13.5");
        assertFalse(model.ratio().remembered());
        open(afrLog("b.csv", "rpm"), afrLog("c.csv", "engine speed [rpm]"));
        select(1);
        assertEquals(12.6 / 13.5, lambda(1), 1e-9);
        assertTrue(model.ratio().remembered());
        String said = model.ride().orElseThrow().remarks().get(0).what();
        assertTrue(said.contains("with the same headings; its AFR is divided by 13.5"), said);
        assertTrue(model.rides().get(2).ride().isRatioUntold(), "another logger's display may be set otherwise");
        select(2);
        model.ratio().take("14.7");
        assertFalse(model.ride().orElseThrow().isRatioUntold());
        assertEquals(12.6 / 13.5, lambda(0), 1e-9);
        assertEquals(12.6 / 13.5, lambda(1), 1e-9);
        select(1);
        model.ratio().take("14.1");
        assertEquals(12.6 / 14.1, lambda(0), 1e-9, "the same logger");
        assertEquals(12.6 / 14.7, lambda(2), 1e-9);
    }

    @Test
    void mixturesAreShownByARatioWhoseRideIsStillThere() throws IOException {
        open(afrLog("a.csv", "rpm"), afrLog("b.csv", "engine speed [rpm]"));
        select(0);
        model.ratio().take("13.5");
        select(1);
        model.ratio().take("14.1");
        assertEquals(14.1, session.job().displayRatio());
        model.order().remove();
        assertEquals(13.5, session.job().displayRatio());
        session.undo();
        assertEquals(14.1, session.job().displayRatio());
    }

    @Test
    void aSecondLoggersDisplayHasARatioOfItsOwn() throws IOException {
        StringBuilder one = new StringBuilder("time [s],rpm,throttle [%],AFR\n");
        StringBuilder two = new StringBuilder("time [s],engine speed [rpm],air fuel ratio\n");
        java.util.Random random = new java.util.Random(2);
        double rpm = 3000;
        for (int i = 0; i < 4000; i++) {
            rpm = Math.max(1200, Math.min(7000, rpm + 120 * random.nextGaussian()));
            one.append(String.format(Locale.ROOT, "%.2f,%.0f,%d,12.%d%n", i / 20.0, rpm, i % 90, 6 + i % 7 / 3));
            two.append(String.format(Locale.ROOT, "%.2f,%.0f,12.%d%n", i / 20.0 - 12, rpm, 6 + i % 7 / 3));
        }
        open(Files.writeString(folder.resolve("one.csv"), one));
        model.ratio().take("13.5");
        model.addSecond(Files.writeString(folder.resolve("two.csv"), two));
        assertEquals(12.6 / 13.5, logged(false), 1e-9);
        assertEquals(12.6 / 14.7, logged(true), 1e-9, "the first one's ratio says nothing of it");
        assertTrue(model.secondRatio().asked());
        assertFalse(model.secondRatio().said());
        assertEquals("two.csv", model.secondRatio().name().orElseThrow());
        assertTrue(model.secondRatio().take("14.1"));
        assertEquals(12.6 / 13.5, logged(false), 1e-9);
        assertEquals(12.6 / 14.1, logged(true), 1e-9);
        model.withoutSecond();
        assertFalse(model.secondRatio().asked());
        assertEquals(13.5, model.ratio().value());
        assertEquals(13.5, session.job().displayRatio());
    }

    private double logged(boolean ofSecond) {
        Ride log = session.reading().log(model.ride().orElseThrow(), ofSecond).orElseThrow();
        return log.mixtures().get(0).values().at(98);
    }

    @Test
    void aRememberedRatioIsSaid() throws IOException {
        open(afrLog("a.csv", "rpm"));
        model.read(options -> options.withAfrScale(13.5));
        model.order().remove();
        open(afrLog("b.csv", "rpm"));
        assertEquals(12.6 / 13.5, lambda(0), 1e-9);
        assertTrue(model.ratio().remembered());
        assertTrue(model.ride().orElseThrow().remarks().get(0).what().contains("divided by 13.5"));
    }

    /** A log whose mixture is a controller's output: 1.00 V in every seventh row. */
    private Path voltsLog(String name) throws IOException {
        StringBuilder text = new StringBuilder("time [s],rpm,throttle [%],wideband [V]\n");
        for (int i = 0; i < 200; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%d,%d,%.2f%n",
                    i / 20.0,
                    2000 + 10 * i + name.charAt(0) - 'a',
                    i / 2,
                    1 + i % 7 / 2.0));
        }
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void theScaleOfWidebandVoltsIsAskedAndTheRideReadByIt() throws IOException {
        open(log("a.csv"));
        assertFalse(model.asksForScale());
        open(voltsLog("b.csv"));
        select(1);
        assertTrue(model.asksForScale());
        assertTrue(model.ride().orElseThrow().mixtures().isEmpty());
        for (List<String> wrong : List.of(
                List.of("0.5", "0.7", "", ""),
                List.of("0.5", "0.7", "0.5", "1.3"),
                List.of("0.5", "0.7", "4.5", "0.7"),
                List.of("0.5", "NaN", "4.5", "1.3"),
                List.of("NaN", "0.7", "4.5", "1.3"),
                List.of("0", "10", "5", "20"))) {
            assertFalse(model.widebandScale(wrong), wrong.toString());
        }
        assertTrue(model.widebandScale(List.of("0,5", "0,7", "4,5", "1,3")));
        assertEquals(0.775, lambda(1), 1e-9);
        assertTrue(model.asksForScale(), "to be changed");
        assertTrue(model.ride().orElseThrow().remarks().stream()
                .noneMatch(r -> r.todo().contains("--volts")));
        open(voltsLog("c.csv"));
        select(2);
        assertEquals(0.775, lambda(2), 1e-9);
        assertTrue(session.reading().remembered(model.ride().orElseThrow()));
        assertTrue(model.ride().orElseThrow().remarks().get(0).what().contains("with the same headings"));
        session.undo();
        session.undo();
        select(1);
        assertTrue(model.ride().orElseThrow().mixtures().isEmpty());
    }

    @Test
    void aDialectThatCannotBeLeavesTheRideAsItWas() throws IOException {
        open(log("a.csv"));
        Ride before = model.ride().orElseThrow();
        model.read(options -> options.withDelimiter(','));
        assertEquals(before, model.ride().orElseThrow());
        assertFalse(session.issues().isEmpty());
    }

    @Test
    void aSecondLoggerIsAddedMovedAndTakenAway() throws IOException {
        open(log("a.csv"));
        Ride alone = model.ride().orElseThrow();
        Path poor = Files.writeString(folder.resolve("poor.csv"), "time [s],lambda\n0,0.9\n0.1,0.91\n0.2,0.92\n");
        model.addSecond(poor);
        assertEquals(alone, model.ride().orElseThrow());
        assertTrue(session.issues().stream().anyMatch(i -> i.file().equals("poor.csv")));
        StringBuilder text = new StringBuilder("time [s],rpm,lambda\n");
        java.util.Random random = new java.util.Random(1);
        StringBuilder own = new StringBuilder("time [s],rpm,throttle [%]\n");
        double rpm = 3000;
        for (int i = 0; i < 4000; i++) {
            rpm = Math.max(1200, Math.min(7000, rpm + 120 * random.nextGaussian()));
            own.append(String.format(Locale.ROOT, "%.2f,%.0f,%d%n", i / 20.0, rpm, i % 90));
            text.append(String.format(Locale.ROOT, "%.2f,%.0f,0.9%d%n", i / 20.0 - 12, rpm, i % 8));
        }
        open(Files.writeString(folder.resolve("own.csv"), own));
        model.selectedProperty().set(1);
        model.addSecond(Files.writeString(folder.resolve("wideband.csv"), text));
        ClockAlignment found = model.second().orElseThrow().alignment();
        assertEquals(12, found.offsetS(), 0.05);
        assertEquals("own.csv + wideband.csv", model.ride().orElseThrow().name());
        model.nudge(0.2);
        assertEquals(
                found.offsetS() + 0.2, model.second().orElseThrow().alignment().offsetS(), 1e-9);
        model.drift(1e-4);
        assertEquals(
                found.drift() + 1e-4, model.second().orElseThrow().alignment().drift(), 1e-12);
        model.withoutSecond();
        assertEquals("own.csv", model.ride().orElseThrow().name());
        assertTrue(model.second().isEmpty());
    }

    @Test
    void ridesAreMovedAndSaidToBeMadeWithAnEarlierTable() throws IOException {
        open(log("a.csv"), log("b.csv"));
        model.selectedProperty().set(0);
        model.order().move(-1);
        assertEquals(0, model.index());
        model.order().move(1);
        assertEquals(1, model.index());
        assertEquals(
                List.of("b.csv", "a.csv"),
                model.rides().stream().map(r -> r.ride().name()).toList());
        Table earlier = fuelwright.ui.Fixture.job().fuelTable().orElseThrow();
        session.edit(job -> job.withPast(List.of(new PastTable(earlier, 1, Double.NaN))));
        assertEquals(2, model.order().tables().size());
        model.order().madeWith(Optional.of(earlier));
        assertEquals(Optional.of(earlier), session.job().rides().get(1).madeWith());
        assertEquals("made with table 1", model.order().tableWords(Optional.of(earlier)));
        JobRide other = session.job().rides().get(0);
        assertEquals(Optional.empty(), other.madeWith());
    }

    @Test
    void theSameLogUnderAnotherNameIsRefusedAndOneOfTheSameRideToo() throws IOException {
        open(log("a.csv"));
        Path copy = Files.copy(folder.resolve("a.csv"), folder.resolve("copy of a.csv"));
        open(copy, log("b.csv"));
        assertEquals(
                List.of("a.csv", "b.csv"),
                model.rides().stream().map(r -> r.ride().name()).toList());
        assertEquals(
                "copy of a.csv: this log holds the same readings as a.csv, which is there already: they would count twice."
                        + " Leave one of the two out",
                session.issues().get(session.issues().size() - 1).sentence());
        String longer = Files.readString(copy).replace(';', ',') + "20.00,2500,50,0.600,0.95\n";
        open(Files.writeString(folder.resolve("exported again.csv"), longer));
        assertEquals(2, model.rides().size(), "the same ride in other letters, with a row more");
        open(folder.resolve("a.csv"), folder.resolve("b.csv"));
        assertEquals(2, model.rides().size());
        assertEquals(
                2,
                session.issues().stream()
                        .filter(i -> i.what().contains("twice"))
                        .count());
    }

    @Test
    void theDensityHoldsTheRidesTime() throws IOException {
        open(log("a.csv"));
        Table table = fuelwright.ui.Fixture.job().fuelTable().orElseThrow();
        RideDensity density = RideDensity.of(model.ride().orElseThrow(), table).orElseThrow();
        double sum = density.outsideS();
        for (int cell = 0; cell < table.cells(); cell++) {
            sum += density.secondsIn(cell);
        }
        assertEquals(model.ride().orElseThrow().durationS(), sum, 1e-9);
        assertTrue(density.points() > 20);
    }
}
