package fuelwright.ui;

import fuelwright.ui.session.BackgroundRunner;
import fuelwright.ui.session.Services;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.shell.Shell;
import fuelwright.ui.theme.OverPage;
import fuelwright.ui.theme.Theme;
import fuelwright.work.RecipeBook;
import fuelwright.work.StateFolder;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.animation.PauseTransition;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ListView;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.util.Duration;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/**
 * Takes pictures of every stage in both themes without a display. Arguments: folder, {@code real} for the sample job or {@code fixture},
 * then stages (or none for all), sizes as {@code 1280x800}, themes, {@code cell=128},
 * {@code page=gain-page} to open that page over the stage, {@code choose=0,2} to choose lines of the list
 * of jobs there, {@code open=x.fwjob} for another job than the sample, {@code finder} for the list of actions, {@code press=First ride} to press the button of that name,
 * {@code also=proposal-dark} for one more, {@code plain} for names without the size. Start with the headless options of the build.
 */
public final class Pictures extends Application {

    private record Shot(Stage stage, Theme theme, int width, int height) {}

    private final List<Shot> shots = new ArrayList<>();
    private Session session;
    private Shell shell;
    private javafx.stage.Stage window;
    private String folder;

    @Override
    public void start(javafx.stage.Stage stage) {
        List<String> args = getParameters().getRaw();
        folder = args.get(0);
        new File(folder).mkdirs();
        Services services = args.contains("real")
                ? new WorkServices(new RecipeBook(Path.of("target", "state")), StateFolder.none())
                : new FixtureServices();
        session = new Session(services, new BackgroundRunner());
        setUserAgentStylesheet(Theme.LIGHT.base());
        shell = new Shell(session, WindowApp.panes(session));
        WindowApp.pages(session, shell);
        window = stage;
        stage.setScene(shell.scene());
        stage.show();
        for (Theme theme : Theme.values()) {
            for (Stage what : Stage.values()) {
                for (String size : new String[] {"1280x800", "1920x1080"}) {
                    plan(args, theme, what, size);
                }
            }
        }
        args.stream().filter(a -> a.startsWith("also=")).forEach(a -> {
            String[] both = a.substring(5).toUpperCase(Locale.ROOT).split("-");
            shots.add(new Shot(Stage.valueOf(both[0]), Theme.valueOf(both[1]), 1280, 800));
        });
        args.stream()
                .filter(a -> a.equals("afr"))
                .forEach(a -> session.afrProperty().set(true));
        session.analysisProperty().addListener((p, old, now) -> {
            if (old == null) {
                args.stream()
                        .filter(a -> a.startsWith("cell="))
                        .forEach(a -> session.cellProperty().set(Integer.parseInt(a.substring(5))));
                next(0);
            }
        });
        Optional<Path> job = after("open=").map(Path::of);
        if (args.contains("empty")) {
            next(0);
        } else if (job.isPresent()) {
            session.open(List.of(job.get()));
        } else {
            session.openSample();
        }
        PauseTransition late = new PauseTransition(Duration.seconds(240));
        late.setOnFinished(e -> Platform.exit());
        late.play();
    }

    private void plan(List<String> args, Theme theme, Stage what, String size) {
        boolean stages = args.stream().anyMatch(a -> is(Stage.values(), a));
        boolean themes = args.stream().anyMatch(a -> is(Theme.values(), a));
        boolean sizes = args.stream().anyMatch(a -> a.matches("\\d+x\\d+"));
        if ((!stages || args.contains(what.name().toLowerCase(Locale.ROOT)))
                && (!themes || args.contains(theme.name().toLowerCase(Locale.ROOT)))
                && (!sizes || args.contains(size))) {
            String[] parts = size.split("x");
            shots.add(new Shot(what, theme, Integer.parseInt(parts[0]), Integer.parseInt(parts[1])));
        }
    }

    private static boolean is(Enum<?>[] all, String name) {
        for (Enum<?> one : all) {
            if (one.name().toLowerCase(Locale.ROOT).equals(name)) {
                return true;
            }
        }
        return false;
    }

    private void next(int index) {
        if (index == shots.size()) {
            Platform.exit();
            return;
        }
        Shot shot = shots.get(index);
        session.themeProperty().set(shot.theme());
        session.stageProperty().set(shot.stage());
        window.setWidth(shot.width());
        window.setHeight(shot.height());
        PauseTransition pause =
                new PauseTransition(Duration.millis(after("page=").isPresent() ? 4000 : 1500));
        after("page=").ifPresent(this::openPage);
        getParameters().getRaw().stream().filter(a -> a.startsWith("press=")).forEach(a -> press(a.substring(6)));
        if (getParameters().getRaw().contains("finder")) {
            shell.scene()
                    .getAccelerators()
                    .get(new KeyCodeCombination(KeyCode.K, KeyCombination.SHORTCUT_DOWN))
                    .run();
        }
        pause.setOnFinished(e -> {
            save(shot);
            next(index + 1);
        });
        pause.play();
    }

    private Optional<String> after(String option) {
        return getParameters().getRaw().stream()
                .filter(a -> a.startsWith(option))
                .map(a -> a.substring(option.length()))
                .findFirst();
    }

    /** A page that lies over the stages, some lines of its list chosen once it is filled. */
    private void openPage(String id) {
        ((OverPage) shell.root().lookup("#" + id)).open();
        PauseTransition filled = new PauseTransition(Duration.millis(2000));
        filled.setOnFinished(e -> after("choose=").ifPresent(lines -> {
            ListView<?> list = (ListView<?>) shell.root().lookup("#records-list");
            for (String line : lines.split(",")) {
                list.getSelectionModel().select(Integer.parseInt(line));
            }
        }));
        filled.play();
    }

    private void press(String text) {
        shell.root().applyCss();
        for (Node node : shell.root().lookupAll("*")) {
            if (node instanceof ButtonBase button && text.equals(button.getText())) {
                button.fire();
            }
        }
    }

    private void save(Shot shot) {
        WritableImage image = shell.scene().snapshot(null);
        int w = (int) image.getWidth();
        int h = (int) image.getHeight();
        BufferedImage copy = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                copy.setRGB(x, y, rounded(image.getPixelReader().getArgb(x, y)));
            }
        }
        String name = shot.stage() + "-" + shot.theme() + (plainNames() ? "" : "-" + shot.width()) + ".png";
        File file = new File(folder, name.toLowerCase(Locale.ROOT));
        file.delete();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam param = writer.getDefaultWriteParam();
        param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionQuality(0);
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(copy, null, null), param);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Six bits a channel: nobody sees it, and the file is smaller. */
    private static int rounded(int argb) {
        int high = argb & 0xFCFCFC;
        return high | high >> 6 & 0x030303;
    }

    private boolean plainNames() {
        return getParameters().getRaw().contains("plain");
    }

    @Override
    public void stop() {
        session.close();
    }
}
