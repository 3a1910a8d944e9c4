package fuelwright;

import fuelwright.cli.CommandLineTool;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;

/**
 * Where the program starts. With arguments: the command line, unless they are those of the window, see
 * {@link fuelwright.ui.WindowApp}. Without: the window, or, where there can be none, the sample job headless
 * into {@code target/sample-output}.
 */
public final class Main {

    private Main() {}

    public static void main(String[] args) {
        boolean window = Start.isForWindow(args);
        OptionalInt done = window ? OptionalInt.empty() : ShortRun.of(args);
        done.ifPresent(System::exit);
        PrintWriter out = utf8(FileDescriptor.out);
        PrintWriter err = utf8(FileDescriptor.err);
        int code = window ? Start.window(args, out, err) : CommandLineTool.run(args, out, err);
        out.flush();
        err.flush();
        System.exit(code);
    }

    /** What is written may be read by a script anywhere, so its encoding must not depend on the machine. */
    private static PrintWriter utf8(FileDescriptor descriptor) {
        return new PrintWriter(new FileOutputStream(descriptor), true, StandardCharsets.UTF_8);
    }
}
