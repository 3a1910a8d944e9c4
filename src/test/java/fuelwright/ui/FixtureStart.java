package fuelwright.ui;

import javafx.application.Application;

/** Opens the window on the made-up job, to look at it. */
public final class FixtureStart {

    private FixtureStart() {}

    public static void main(String[] args) {
        QuietStart.apply();
        Application.launch(FixtureWindow.class, args);
    }
}
