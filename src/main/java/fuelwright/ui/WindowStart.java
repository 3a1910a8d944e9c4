package fuelwright.ui;

/** Starts the window alone: {@code java -cp … fuelwright.ui.WindowStart [--stage=rides] [--theme=dark] [FILE …]}. */
public final class WindowStart {

    private WindowStart() {}

    public static void main(String[] args) {
        System.exit(WindowApp.open(args));
    }
}
