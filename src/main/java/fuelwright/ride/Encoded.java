package fuelwright.ride;

import fuelwright.issue.Loaded;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A log's bytes in an encoding whose ASCII is ASCII, lines ending in LF or CR LF.
 *
 * @param bytes the bytes; UTF-16 and lone CRs have been rewritten
 * @param start where the text starts (after a byte order mark)
 * @param charset of {@code bytes}
 * @param words the encoding of the file, for the user
 */
record Encoded(ByteSource bytes, long start, Charset charset, String words) {

    /** Bytes that are looked at before anything is read. */
    static final int HEAD = 256 * 1024;

    /** A log whose first line is longer than this isn't one. */
    static final int LONGEST_FIRST_LINE = 1024 * 1024;

    private static final String INSTEAD = "choose the log as the logger exported it: a text file with one row a sample";

    private record Magic(String words, int... bytes) {
        boolean starts(byte[] head) {
            for (int i = 0; i < bytes.length; i++) {
                if (i >= head.length || (head[i] & 0xff) != bytes[i]) {
                    return false;
                }
            }
            return true;
        }
    }

    private static final List<Magic> MAGICS = List.of(
            new Magic("a JPEG picture", 0xff, 0xd8, 0xff),
            new Magic("a PNG picture", 0x89, 'P', 'N', 'G'),
            new Magic("a GIF picture", 'G', 'I', 'F', '8'),
            new Magic("a zip package (a spreadsheet workbook is one: save it as CSV)", 'P', 'K', 3, 4),
            new Magic("an old office document (save it as CSV)", 0xd0, 0xcf, 0x11, 0xe0),
            new Magic("a PDF document", '%', 'P', 'D', 'F', '-'),
            new Magic("a gzip archive (unpack it first)", 0x1f, 0x8b),
            new Magic("a 7z archive (unpack it first)", '7', 'z', 0xbc, 0xaf),
            new Magic("a program", 0x7f, 'E', 'L', 'F'));

    static Loaded<Encoded> of(String name, ByteSource source, RideOptions options) throws IOException {
        byte[] head = source.bytes(0, HEAD);
        if (head.length == 0) {
            return refused(name, "the file is empty", "export the log again, or choose another file");
        }
        for (Magic magic : MAGICS) {
            if (magic.starts(head)) {
                return refused(name, "this is " + magic.words() + ", not a log", INSTEAD);
            }
        }
        Optional<Charset> wide = options.charset().filter(c -> !isAscii(c));
        int bom = 0;
        if (starts(head, 0xff, 0xfe)) {
            wide = Optional.of(StandardCharsets.UTF_16LE);
            bom = 2;
        } else if (starts(head, 0xfe, 0xff)) {
            wide = Optional.of(StandardCharsets.UTF_16BE);
            bom = 2;
        } else if (wide.isEmpty() && options.charset().isEmpty()) {
            wide = utf16WithoutMark(head);
        }
        if (wide.isPresent()) {
            ByteSource narrow = ByteSource.of(utf8(source, bom, wide.get()));
            String words = wide.get().name() + (bom > 0 ? " with byte order mark" : "");
            return checked(name, new Encoded(narrow, 0, StandardCharsets.UTF_8, words));
        }
        if (starts(head, 0xef, 0xbb, 0xbf)) {
            return checked(name, new Encoded(source, 3, StandardCharsets.UTF_8, "UTF-8 with byte order mark"));
        }
        Charset charset = options.charset().orElse(isUtf8(head) ? StandardCharsets.UTF_8 : Dialect.WINDOWS_1252);
        return checked(name, new Encoded(source, 0, charset, Dialect.charsetWord(charset)));
    }

    private static Loaded<Encoded> checked(String name, Encoded encoded) throws IOException {
        byte[] head = encoded.bytes().bytes(encoded.start(), HEAD);
        int controls = 0;
        int nuls = 0;
        boolean feed = false;
        boolean carriage = false;
        for (byte b : head) {
            feed |= b == '\n';
            carriage |= b == '\r';
            nuls += b == 0 ? 1 : 0;
            controls += b >= 0 && b < 32 && b != '\n' && b != '\r' && b != '\t' && b != 0 || b == 127 ? 1 : 0;
        }
        if (nuls == head.length) {
            return refused(
                    name, "the file holds nothing but NUL bytes", "the logger didn't finish writing it: copy it again");
        }
        if (controls * 50L > head.length || nuls * 2L > head.length && !feed) {
            return refused(name, "this is not text, so it is not a log", INSTEAD);
        }
        if (!feed && carriage) {
            byte[] all = encoded.bytes().bytes(encoded.start(), Integer.MAX_VALUE - 16);
            for (int i = 0; i < all.length; i++) {
                all[i] = all[i] == '\r' ? (byte) '\n' : all[i];
            }
            return Loaded.of(
                    new Encoded(ByteSource.of(all), 0, encoded.charset(), encoded.words() + ", lines ending in CR"),
                    List.of());
        }
        if (!feed && encoded.bytes().size() > LONGEST_FIRST_LINE) {
            byte[] more = encoded.bytes().bytes(encoded.start(), LONGEST_FIRST_LINE);
            boolean found = false;
            for (byte b : more) {
                found |= b == '\n';
            }
            if (!found) {
                return refused(
                        name, "the first line is longer than a million characters, so this is not a log", INSTEAD);
            }
        }
        return Loaded.of(encoded, List.of());
    }

    private static Loaded<Encoded> refused(String name, String what, String todo) {
        return Loaded.refused(Say.error(name, 1, 1, what, todo));
    }

    private static boolean starts(byte[] head, int... bytes) {
        return new Magic("", bytes).starts(head);
    }

    /** Whether ASCII is ASCII in {@code charset}; otherwise the text is rewritten before it is read. */
    private static boolean isAscii(Charset charset) {
        String all = "0123456789+-.,;:|\t\r\n\"#EeANan";
        return charset.canEncode() && Arrays.equals(all.getBytes(charset), all.getBytes(StandardCharsets.US_ASCII));
    }

    private static Optional<Charset> utf16WithoutMark(byte[] head) {
        int look = Math.min(head.length, 4096) & ~1;
        int[] nuls = new int[2];
        for (int i = 0; i < look; i++) {
            nuls[i & 1] += head[i] == 0 ? 1 : 0;
        }
        int half = look / 2;
        if (half >= 4 && nuls[1] * 10 > half * 8 && nuls[0] * 10 < half) {
            return Optional.of(StandardCharsets.UTF_16LE);
        }
        if (half >= 4 && nuls[0] * 10 > half * 8 && nuls[1] * 10 < half) {
            return Optional.of(StandardCharsets.UTF_16BE);
        }
        return Optional.empty();
    }

    private static byte[] utf8(ByteSource source, long from, Charset wide) throws IOException {
        CharsetDecoder decoder = wide.newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        ByteArrayOutputStream out = new ByteArrayOutputStream((int) Math.min(1 << 30, source.size() / 2 + 16));
        byte[] piece = new byte[(int) Math.min(1 << 20, source.size() + 2 & ~1)];
        for (long at = from; at < source.size(); at += piece.length) {
            int read = source.read(at, piece, 0, piece.length);
            ByteBuffer in = ByteBuffer.wrap(piece, 0, read & ~1);
            CharBuffer chars = decoder.decode(in);
            out.write(chars.toString().getBytes(StandardCharsets.UTF_8));
        }
        return out.toByteArray();
    }

    /** Whether the bytes are UTF-8; a character cut at the very end doesn't count against it. */
    private static boolean isUtf8(byte[] head) {
        int end = head.length;
        for (int back = 1; back <= 3 && head.length == HEAD && back <= end; back++) {
            if ((head[end - back] & 0xc0) == 0xc0) {
                return decodes(Arrays.copyOf(head, end - back));
            }
        }
        return decodes(head);
    }

    private static boolean decodes(byte[] bytes) {
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
            return true;
        } catch (CharacterCodingException e) {
            return false;
        }
    }
}
