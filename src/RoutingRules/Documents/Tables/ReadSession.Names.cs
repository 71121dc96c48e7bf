using System.Buffers;
using System.Buffers.Binary;
using System.Text;

namespace RoutingRules.Documents.Tables;

/// <content>Ids and words repeat all over a document, so each is made into a string once.</content>
internal sealed partial class ReadSession
{
    /// <summary>A text that finds no place after so many steps gets its own string, so that chosen collisions cannot slow the reading down.</summary>
    private const int MaxSteps = 8;

    private NameEntry[] names = RentNames(256);
    private int nameMask = 255;
    private int nameCount;

    /// <summary>The string of an ASCII text, the same object for the same text as far as possible.</summary>
    public string Name(ReadOnlySpan<byte> ascii)
    {
        var hash = Hash(ascii);
        for (var step = 0; step < MaxSteps; step++)
        {
            ref var entry = ref names[(hash + (uint)step) & (uint)nameMask];
            if (entry.Text is null)
            {
                entry.Text = Encoding.UTF8.GetString(ascii);
                entry.Hash = hash;
                var text = entry.Text;
                nameCount++;
                if (2 * nameCount > nameMask)
                {
                    GrowNames();
                }

                return text;
            }

            if (entry.Hash == hash && Ascii.Equals(ascii, entry.Text))
            {
                return entry.Text;
            }
        }

        return Encoding.UTF8.GetString(ascii);
    }

    private static uint Hash(ReadOnlySpan<byte> text)
    {
        const ulong Factor = 0x9E37_79B9_7F4A_7C15;
        var hash = (ulong)text.Length;
        while (text.Length > 8)
        {
            hash = (hash ^ BinaryPrimitives.ReadUInt64LittleEndian(text)) * Factor;
            hash ^= hash >> 32;
            text = text[8..];
        }

        var rest = 0UL;
        if (text.Length >= 4)
        {
            rest = BinaryPrimitives.ReadUInt32LittleEndian(text) | ((ulong)BinaryPrimitives.ReadUInt32LittleEndian(text[^4..]) << 32);
        }
        else
        {
            foreach (var value in text)
            {
                rest = (rest << 8) | value;
            }
        }

        hash = (hash ^ rest) * Factor;
        return (uint)(hash >> 32);
    }

    private static NameEntry[] RentNames(int size)
    {
        var rented = ArrayPool<NameEntry>.Shared.Rent(size);
        rented.AsSpan(0, size).Clear();
        return rented;
    }

    private void GrowNames()
    {
        var old = names;
        var oldSize = nameMask + 1;
        names = RentNames(2 * oldSize);
        nameMask = (2 * oldSize) - 1;
        foreach (var entry in old.AsSpan(0, oldSize))
        {
            if (entry.Text is null)
            {
                continue;
            }

            for (var step = 0; step < MaxSteps; step++)
            {
                ref var place = ref names[(entry.Hash + (uint)step) & (uint)nameMask];
                if (place.Text is null)
                {
                    place = entry;
                    break;
                }
            }
        }

        ArrayPool<NameEntry>.Shared.Return(old, clearArray: true);
    }

    private void ReturnNames() => ArrayPool<NameEntry>.Shared.Return(names, clearArray: true);

    private struct NameEntry
    {
        public string? Text;
        public uint Hash;
    }
}
