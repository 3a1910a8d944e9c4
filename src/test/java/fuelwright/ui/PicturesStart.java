package fuelwright.ui;

import javafx.application.Application;

/** Starts {@link Pictures}. */
public final class PicturesStart {

    private PicturesStart() {}

    public static void main(String[] args) {
        QuietStart.apply();
        Application.launch(Pictures.class, args);
    }
}
