package ampersheet.sheet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.RandomAccess;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;

/**
 * The seats of a large class in a few bytes each: what is asked for is unpacked with its neighbours, which are asked
 * for next. May be used by several threads.
 */
final class PackedSeats extends AbstractList<Roster.Seat> implements RandomAccess {
    private static final int IN_A_BLOCK = 256;

    private final List<byte[]> blocks;
    private final int size;
    private volatile Unpacked last = new Unpacked(-1, List.of());

    /** One block as it is used. */
    private record Unpacked(int block, List<Roster.Seat> seats) {}

    private PackedSeats(List<byte[]> blocks, int size) {
        this.blocks = List.copyOf(blocks);
        this.size = size;
    }

    /** Takes seats one after another. */
    static final class Packing {
        private final List<byte[]> blocks = new ArrayList<>();
        private final List<Roster.Seat> open = new ArrayList<>();
        private int size;

        void add(Roster.Seat seat) {
            open.add(seat);
            size++;
            if (open.size() == IN_A_BLOCK) {
                close();
            }
        }

        private void close() {
            blocks.add(packed(open));
            open.clear();
        }

        PackedSeats done() {
            if (!open.isEmpty()) {
                close();
            }
            return new PackedSeats(blocks, size);
        }
    }

    @Override
    public Roster.Seat get(int index) {
        if (index < 0 || index >= size) {
            throw new IndexOutOfBoundsException("seat " + index + " of " + size);
        }
        int block = index / IN_A_BLOCK;
        Unpacked here = last;
        if (here.block() != block) {
            here = new Unpacked(block, unpacked(blocks.get(block)));
            last = here;
        }
        return here.seats().get(index % IN_A_BLOCK);
    }

    @Override
    public int size() {
        return size;
    }

    private static byte[] packed(List<Roster.Seat> seats) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(new DeflaterOutputStream(bytes))) {
            out.writeInt(seats.size());
            for (Roster.Seat seat : seats) {
                out.writeInt(seat.number());
                write(out, seat.name());
                out.writeInt(seat.further().size());
                for (String further : seat.further()) {
                    write(out, further);
                }
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("memory is no device that fails", impossible);
        }
        return bytes.toByteArray();
    }

    private static List<Roster.Seat> unpacked(byte[] block) {
        try (DataInputStream in = new DataInputStream(new InflaterInputStream(new ByteArrayInputStream(block)))) {
            List<Roster.Seat> seats = new ArrayList<>();
            for (int count = in.readInt(); count > 0; count--) {
                int number = in.readInt();
                String name = read(in);
                List<String> further = new ArrayList<>();
                for (int columns = in.readInt(); columns > 0; columns--) {
                    further.add(read(in));
                }
                seats.add(new Roster.Seat(number, name, further));
            }
            return seats;
        } catch (IOException impossible) {
            throw new UncheckedIOException("memory is no device that fails", impossible);
        }
    }

    private static void write(DataOutputStream out, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    private static String read(DataInputStream in) throws IOException {
        return new String(in.readNBytes(in.readInt()), StandardCharsets.UTF_8);
    }
}
