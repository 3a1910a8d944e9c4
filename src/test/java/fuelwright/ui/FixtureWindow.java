package fuelwright.ui;

/** Opens the window on the made-up job, to look at it. */
public final class FixtureWindow extends WindowApp {

    public FixtureWindow() {
        super(new FixtureServices());
    }
}
