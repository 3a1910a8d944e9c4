package fuelwright.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Options of every command that writes. */
final class OutputOptions {

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "folder to write into, whole or not at all")
    private Path folder;

    @Option(names = "--replace", description = "replace files of the same names in it")
    private boolean replace;

    Path folder() {
        if (folder.toString().isBlank()) {
            throw CommandFailed.usage("--out is empty: give a folder, . for the one you are in");
        }
        return folder;
    }

    boolean replace() {
        return replace;
    }
}
