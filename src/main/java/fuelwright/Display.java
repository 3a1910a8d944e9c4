package fuelwright;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Looks for what a window needs before the toolkit is touched, which would only fail with a stack trace. */
final class Display {

    static final String NO_DISPLAY = "There is no display";
    static final String NO_GTK =
            "There is a display, but the GTK 3 library is missing (on Debian: apt-get install libgtk-3-0)";

    private static final String GTK = "libgtk-3.so.0";
    private static final long LDCONFIG_SECONDS = 10;

    private Display() {}

    /** A sentence without full stop, or empty where a window should open. */
    static Optional<String> whatIsMissing() {
        return whatIsMissing(System.getProperty("os.name", ""), System.getenv(), Display::isGtkInstalled);
    }

    /** Answers yes or no. */
    interface Question {
        boolean answer();
    }

    static Optional<String> whatIsMissing(String system, Map<String, String> environment, Question gtk) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows") || name.startsWith("mac") || name.contains("darwin")) {
            return Optional.empty();
        }
        if ("Monocle".equals(System.getProperty("glass.platform"))) {
            return Optional.empty();
        }
        if (environment.getOrDefault("DISPLAY", "").isBlank()) {
            return Optional.of(NO_DISPLAY);
        }
        return gtk.answer() ? Optional.empty() : Optional.of(NO_GTK);
    }

    private static boolean isGtkInstalled() {
        for (String folder : folders()) {
            if (Files.exists(Path.of(folder, GTK))) {
                return true;
            }
        }
        return loaderKnowsGtk();
    }

    private static List<String> folders() {
        List<String> folders = new ArrayList<>();
        String path = System.getenv("LD_LIBRARY_PATH");
        if (path != null) {
            for (String folder : path.split(":")) {
                if (!folder.isEmpty()) {
                    folders.add(folder);
                }
            }
        }
        for (String root : List.of("/usr/lib", "/lib", "/usr/lib64", "/lib64", "/usr/local/lib")) {
            folders.add(root);
        }
        for (String root : List.of("/usr/lib", "/lib")) {
            try (var inside = Files.newDirectoryStream(Path.of(root), "*-linux-gnu*")) {
                inside.forEach(each -> folders.add(each.toString()));
            } catch (IOException e) {
                continue; // no such folder on this system
            }
        }
        return folders;
    }

    /** Whether a line {@code libgtk-3.so.0 (...) => /path} of the loader's cache is about GTK and still true: the cache may be old. */
    private static boolean isThere(String line) {
        int arrow = line.indexOf("=>");
        return arrow > 0
                && line.strip().startsWith(GTK)
                && Files.exists(Path.of(line.substring(arrow + 2).strip()));
    }

    private static boolean loaderKnowsGtk() {
        for (String command : List.of("/sbin/ldconfig", "/usr/sbin/ldconfig", "ldconfig")) {
            try {
                Process process = new ProcessBuilder(command, "-p")
                        .redirectErrorStream(true)
                        .start();
                String known = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                if (process.waitFor(LDCONFIG_SECONDS, TimeUnit.SECONDS) && process.exitValue() == 0) {
                    return known.lines().anyMatch(Display::isThere);
                }
            } catch (IOException e) {
                continue; // not there under this name
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
        }
        return false;
    }
}
