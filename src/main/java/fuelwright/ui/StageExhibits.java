package fuelwright.ui;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.ui.power.GainModel;
import fuelwright.ui.power.GainView;
import fuelwright.ui.power.PowerModel;
import fuelwright.ui.power.PowerView;
import fuelwright.ui.records.RecordsModel;
import fuelwright.ui.records.RecordsView;
import fuelwright.ui.session.BackgroundRunner;
import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Services;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.ShownTable;
import fuelwright.ui.session.Stage;
import fuelwright.ui.tables.TablesModel;
import fuelwright.ui.tables.TablesView;
import fuelwright.ui.theme.Exhibit;
import fuelwright.ui.theme.OverPage;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Theme;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;

/** The stages and the pages over them, with all their panes, in every state that a job can be in. */
final class StageExhibits implements AutoCloseable {

    private static final double WIDE = 960;
    private static final double TALL = 600;
    private static final double EXPLANATION = 320;

    /** What there is to show. */
    enum State {
        EMPTY("empty job"),
        LOADING("the first time being worked out"),
        FAILED("nothing could be worked out"),
        FILLED("worked out, a cell selected"),
        STALE("out of date, being worked out anew"),
        DISABLED("worked out, disabled");

        final String words;

        State(String words) {
            this.words = words;
        }
    }

    /** Does nothing any more once it is stopped, so that what is being done stays so. */
    private static final class Stopping implements Runner {
        private final Runner runner = new BackgroundRunner();
        private boolean stopped;

        @Override
        public <T> void latest(String lane, Duration delay, Work<T> work, Listener<T> listener) {
            if (!stopped) {
                runner.latest(lane, delay, work, listener);
            }
        }

        @Override
        public void cancel(String lane) {
            runner.cancel(lane);
        }

        @Override
        public void close() {
            runner.close();
        }
    }

    private final Services services;
    private final Theme theme;
    private final Map<State, Session> sessions = new EnumMap<>(State.class);

    StageExhibits(Services services, Theme theme) {
        this.services = services;
        this.theme = theme;
        for (State state : State.values()) {
            sessions.put(state, session(state));
        }
    }

    /** A stage in every state. */
    List<Exhibit> of(Stage stage) {
        List<Exhibit> all = new ArrayList<>();
        sessions.forEach((state, session) -> all.add(stage(
                "Stage " + stage.words(),
                state.words,
                state,
                WindowApp.panes(session).get(stage))));
        if (stage == Stage.TABLES) {
            TablesModel model = new TablesModel(of(State.FILLED));
            whenWorkedOut(() -> model.shownProperty().set(ShownTable.FIRST_RIDE));
            all.add(stage("Stage " + stage.words(), "first-ride table", State.FILLED, () -> new TablesView(model)));
        }
        return all;
    }

    private void whenWorkedOut(Runnable then) {
        Session session = of(State.FILLED);
        if (session.analysis() != null) {
            then.run();
        } else {
            session.analysisProperty().addListener((p, old, now) -> then.run());
        }
    }

    /** The pages that lie over the stages. */
    List<Exhibit> pages() {
        List<Exhibit> all = new ArrayList<>();
        for (State state : List.of(State.EMPTY, State.FILLED, State.DISABLED)) {
            Session session = sessions.get(state);
            all.add(page("Power pulls", state, new PowerView(new PowerModel(session))));
            all.add(page("Part gain", state, new GainView(new GainModel(session))));
            all.add(page("Records", state, new RecordsView(new RecordsModel(session))));
        }
        return all;
    }

    /** That of a state; its work may still be going on. */
    Session of(State state) {
        return sessions.get(state);
    }

    private Session session(State state) {
        Stopping runner = new Stopping();
        Session session = new Session(state == State.FAILED ? refusing(services) : services, runner);
        session.themeProperty().set(theme);
        runner.stopped = state == State.LOADING;
        session.analysisProperty().addListener((p, old, now) -> {
            if (old == null && now != null) {
                session.cellProperty().set(now.proposal().before().cells() / 2);
                if (state == State.STALE) {
                    runner.stopped = true;
                    session.edit(job -> job.withProposal(job.proposal().withCaps(30, 10)));
                }
            }
        });
        if (state != State.EMPTY) {
            session.openSample();
        }
        return session;
    }

    /** Does everything but analyse. */
    private static Services refusing(Services services) {
        Issue why =
                Issue.error("ride-1.csv", 0, 0, "no reading of the rides counts", "See the reasons on the stage Rides");
        return (Services) Proxy.newProxyInstance(
                Services.class.getClassLoader(), new Class<?>[] {Services.class}, (proxy, method, given) -> {
                    try {
                        return method.getName().equals("analyse")
                                ? Loaded.refused(List.of(why))
                                : method.invoke(services, given);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    private static Exhibit stage(String name, String words, State state, Supplier<StagePane> maker) {
        StagePane pane = maker.get();
        StackPane explanation = new StackPane(pane.explanation());
        explanation.getStyleClass().add("explanation");
        explanation.setMinWidth(EXPLANATION);
        explanation.setMaxWidth(EXPLANATION);
        HBox.setHgrow(pane.work(), Priority.ALWAYS);
        return exhibit(name, words, state, new HBox(pane.work(), explanation));
    }

    private static Exhibit page(String name, State state, OverPage page) {
        page.open();
        return exhibit(name, state.words, state, new StackPane(page));
    }

    private static Exhibit exhibit(String name, String words, State state, Region node) {
        node.setDisable(state == State.DISABLED);
        node.setMinHeight(TALL);
        node.setMaxHeight(TALL);
        return new Exhibit(name, words, node, WIDE, TALL);
    }

    @Override
    public void close() {
        sessions.values().forEach(Session::close);
    }
}
