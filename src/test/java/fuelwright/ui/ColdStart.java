package fuelwright.ui;

import fuelwright.ui.session.Session;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * How long the window takes from the start of the program, each time in a new process: {@code exec:java@cold-start}. Arguments: how many times
 * (3), then options for the runtime. Without a display it is drawn into memory.
 */
public final class ColdStart {

    private static final String CHILD = "fuelwright.coldstart";

    private ColdStart() {}

    /** Starts processes, or, in one of those, the window. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (Boolean.getBoolean(CHILD)) {
            QuietStart.apply();
            WarmStart.begin();
            Application.launch(Window.class, arguments);
            return;
        }
        int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 3;
        System.out.println("| until | by the clock, s | processor, s |\n| --- | --- | --- |");
        for (int i = 0; i < runs; i++) {
            run(List.of(arguments).subList(Math.min(1, arguments.length), arguments.length));
        }
    }

    private static void run(List<String> options) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        if (System.getenv("DISPLAY") == null) {
            command.addAll(List.of(
                    "-Dglass.platform=Monocle", "-Dmonocle.platform=Headless", "-Dprism.order=sw", "-Dprism.text=t2k"));
        }
        command.addAll(List.of(
                "-D" + CHILD + "=true", "-cp", System.getProperty("java.class.path"), ColdStart.class.getName()));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        System.out.print(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        process.waitFor();
    }

    /** The window, which tells how far it is. */
    public static final class Window extends WindowApp {

        @Override
        public void start(Stage stage) {
            tell("the program's own code");
            super.start(stage);
            tell("the window was asked for");
            Runnable[] frame = new Runnable[1];
            frame[0] = () -> {
                stage.getScene().removePostLayoutPulseListener(frame[0]);
                Platform.runLater(() -> tell("its first frame"));
            };
            stage.getScene().addPostLayoutPulseListener(frame[0]);
            Session session = session();
            session.jobProperty()
                    .addListener((p, old, now) ->
                            tell(now.rides().isEmpty() ? "the sample's tables" : "the sample's rides"));
            session.analysisProperty()
                    .addListener((p, old, now) -> Platform.runLater(() -> {
                        tell("the analysis");
                        Platform.exit();
                    }));
        }
    }

    private static void tell(String what) {
        var system = (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        System.out.printf(
                Locale.ROOT,
                "| %s | %.2f | %.2f |%n",
                what,
                (System.currentTimeMillis()
                                - ManagementFactory.getRuntimeMXBean().getStartTime())
                        / 1e3,
                system.getProcessCpuTime() / 1e9);
    }
}
