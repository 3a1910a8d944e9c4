package fuelwright.ui;

import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.stage.Stage;

/** The window; a placeholder. */
public final class WindowApp extends Application {

    /** Opens the window and waits until it is closed. */
    public static void open(String[] args) {
        launch(WindowApp.class, args);
    }

    @Override
    public void start(Stage stage) {
        stage.setScene(new Scene(new Label("Fuelwright"), 400, 300));
        stage.show();
    }
}
