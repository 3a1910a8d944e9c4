package fuelwright.ui;

import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * The window, which draws all the time. Says "ready" once the sample's rides are in it and a change isn't saved, and then waits to be ended;
 * {@code -Dclosed=true}: is closed at that moment, without a change.
 */
public final class EndedWindow extends WindowApp {

    private final boolean closed = Boolean.getBoolean("closed");
    private boolean ready;

    /** Apart: a class of the toolkit's own kind isn't started from the class path. */
    static final class Start {
        private Start() {}

        public static void main(String[] args) {
            int code = open(EndedWindow.class, args);
            boolean alive = Thread.getAllStackTraces().keySet().stream()
                    .anyMatch(t -> t.getName().equals("JavaFX Application Thread"));
            System.out.print(alive ? "the toolkit still takes itself down" : "");
            System.exit(code);
        }
    }

    @Override
    public void start(Stage stage) {
        super.start(stage);
        new AnimationTimer() {
            @Override
            public void handle(long now) {
                stage.getScene().getRoot().setOpacity(now / 1_000_000 % 2 == 0 ? 1 : 0.9);
            }
        }.start();
        session().jobProperty().addListener((p, old, now) -> {
            if (!ready && !now.rides().isEmpty()) {
                ready = true;
                Platform.runLater(closed ? stage::hide : this::change);
            }
        });
    }

    private void change() {
        session().edit(job -> job.withName("not saved yet"));
        System.out.println("ready");
    }
}
