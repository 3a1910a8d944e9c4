package fuelwright.ui;

import fuelwright.ui.cautions.CautionsModel;
import fuelwright.ui.cautions.CautionsView;
import fuelwright.ui.evidence.EvidenceModel;
import fuelwright.ui.evidence.EvidenceView;
import fuelwright.ui.handover.HandoverModel;
import fuelwright.ui.handover.HandoverView;
import fuelwright.ui.machine.MachineModel;
import fuelwright.ui.machine.MachineView;
import fuelwright.ui.power.GainModel;
import fuelwright.ui.power.GainView;
import fuelwright.ui.power.PowerModel;
import fuelwright.ui.power.PowerView;
import fuelwright.ui.proposal.ProposalModel;
import fuelwright.ui.proposal.ProposalView;
import fuelwright.ui.records.RecordsModel;
import fuelwright.ui.records.RecordsView;
import fuelwright.ui.rides.RidesModel;
import fuelwright.ui.rides.RidesView;
import fuelwright.ui.session.BackgroundRunner;
import fuelwright.ui.session.Services;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.shell.Remembered;
import fuelwright.ui.shell.Shell;
import fuelwright.ui.tables.TablesModel;
import fuelwright.ui.tables.TablesView;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.stage.Screen;

/**
 * The window, opened on the sample job, as it was left the last time; the guide comes by itself once. For pictures and trials: {@code --stage=rides} opens that stage, {@code --theme=dark} that theme,
 * {@code --textsize=large} that size, {@code --cell=112} selects a cell, {@code --afr} shows mixtures as AFR, {@code --imperial} other units; other arguments are files to open.
 */
public class WindowApp extends Application {

    private static final String GALLERY = "--gallery";
    private static final String IMPERIAL = "--imperial";

    private final Services services;
    private Session session;
    private Remembered remembered;

    public WindowApp() {
        this(WorkServices.ofUser());
    }

    protected WindowApp(Services services) {
        this.services = services;
    }

    /** Whether a command line that begins with this is meant for the window. */
    public static boolean isForWindow(String argument) {
        return argument.equals("--afr")
                || argument.equals(IMPERIAL)
                || argument.equals(GALLERY)
                || argument.matches("--(stage|theme|textsize|cell)=.*");
    }

    /**
     * Opens the window and waits until it is closed.
     *
     * @return the exit code: 0, or that of the signal which ended it
     */
    public static int open(String... arguments) {
        return open(WindowApp.class, arguments);
    }

    static int open(Class<? extends WindowApp> kind, String... arguments) {
        QuietStart.apply();
        WarmStart.begin();
        launch(kind, arguments);
        WindowThread.awaitEnd();
        return EndFromOutside.code();
    }

    @Override
    public void start(javafx.stage.Stage stage) {
        WindowThread.isThis();
        EndFromOutside.listen();
        session = new Session(services, new BackgroundRunner());
        Map<String, String> named = getParameters().getNamed();
        // What is asked for is for this time only; otherwise the window is as it was left.
        boolean plain = getParameters().getRaw().stream().noneMatch(a -> a.startsWith("--"));
        remembered = new Remembered(session);
        if (plain) {
            remembered.follow();
        } else {
            session.stageProperty().set(option(Stage.class, named.get("stage"), Stage.MACHINE));
            session.themeProperty().set(option(Theme.class, named.get("theme"), Theme.LIGHT));
            session.textSizeProperty().set(option(TextSize.class, named.get("textsize"), TextSize.NORMAL));
            session.afrProperty().set(getParameters().getUnnamed().contains("--afr"));
            session.measuresProperty()
                    .set(getParameters().getUnnamed().contains(IMPERIAL) ? Measures.IMPERIAL : Measures.METRIC);
        }
        if (getParameters().getUnnamed().contains(GALLERY)) {
            stage.setTitle("Gallery");
            stage.setScene(new Gallery(
                            services,
                            session.themeProperty().get(),
                            session.textSizeProperty().get())
                    .scene());
            fill(stage, Screen.getPrimary().getVisualBounds());
            stage.show();
            return;
        }
        setUserAgentStylesheet(session.themeProperty().get().base());
        Shell shell = new Shell(session, panes(session));
        pages(session, shell);
        stage.setScene(shell.scene());
        stage.titleProperty().bind(shell.title());
        stage.setOnCloseRequest(e -> {
            Runnable leave = plain ? () -> remembered.leave(stage) : () -> {};
            boolean now = shell.mayClose(() -> {
                leave.run();
                stage.hide();
            });
            if (now) {
                leave.run();
            } else {
                e.consume();
            }
        });
        stage.setMinWidth(960);
        stage.setMinHeight(680);
        if (named.containsKey("cell")) {
            int cell = Integer.parseInt(named.get("cell"));
            session.analysisProperty().addListener((p, old, now) -> {
                if (old == null) {
                    session.cellProperty().set(cell);
                }
            });
        }
        if (!plain || !remembered.place(stage)) {
            fill(stage, Screen.getPrimary().getVisualBounds());
            stage.setMaximized(true);
        }
        stage.show();
        shell.focusStage();
        if (plain && remembered.isFirstTime()) {
            shell.beginTour();
        }
        afterFirstFrame(stage.getScene(), this::openJob);
    }

    /** Work in the background would only keep the first frame from being made. */
    private static void afterFirstFrame(Scene scene, Runnable then) {
        Runnable[] frame = new Runnable[1];
        frame[0] = () -> {
            scene.removePostLayoutPulseListener(frame[0]);
            Platform.runLater(then);
        };
        scene.addPostLayoutPulseListener(frame[0]);
        Platform.requestNextPulse();
    }

    private void openJob() {
        session.openSample();
        var files = getParameters().getUnnamed().stream()
                .filter(a -> !a.startsWith("--"))
                .map(Path::of)
                .toList();
        if (!files.isEmpty()) {
            session.open(files);
        }
    }

    /** What is open, once the window has started. */
    protected Session session() {
        return session;
    }

    /** The whole screen also where no window manager maximises. */
    private static void fill(javafx.stage.Stage stage, Rectangle2D screen) {
        stage.setX(screen.getMinX());
        stage.setY(screen.getMinY());
        stage.setWidth(screen.getWidth());
        stage.setHeight(screen.getHeight());
    }

    /** The pages that lie over the stages. */
    static void pages(Session session, Shell shell) {
        shell.addPage(Words.of("action.power"), new PowerView(new PowerModel(session)));
        shell.addPage(Words.of("action.gain"), new GainView(new GainModel(session)));
        shell.addPage(Words.of("action.records"), new RecordsView(new RecordsModel(session)));
    }

    /** What makes each stage's pane. */
    public static Map<Stage, Supplier<StagePane>> panes(Session session) {
        Map<Stage, Supplier<StagePane>> panes = new EnumMap<>(Stage.class);
        panes.put(Stage.MACHINE, () -> new MachineView(new MachineModel(session)));
        panes.put(Stage.TABLES, () -> new TablesView(new TablesModel(session)));
        panes.put(Stage.RIDES, () -> new RidesView(new RidesModel(session)));
        panes.put(Stage.EVIDENCE, () -> new EvidenceView(new EvidenceModel(session)));
        panes.put(Stage.PROPOSAL, () -> new ProposalView(new ProposalModel(session)));
        panes.put(Stage.CAUTIONS, () -> new CautionsView(new CautionsModel(session)));
        panes.put(Stage.HANDOVER, () -> new HandoverView(new HandoverModel(session)));
        return panes;
    }

    private static <E extends Enum<E>> E option(Class<E> kind, String name, E otherwise) {
        for (E value : kind.getEnumConstants()) {
            if (value.name().toLowerCase(Locale.ROOT).equals(name)) {
                return value;
            }
        }
        return otherwise;
    }

    @Override
    public void stop() {
        if (EndFromOutside.isAsked()) {
            session.endUnasked();
        } else {
            session.close();
        }
        remembered.keepNow();
    }
}
