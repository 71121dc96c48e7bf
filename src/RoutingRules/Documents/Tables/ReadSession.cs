using System.Buffers;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>The state of one reading: where it is, what it has read so far, what it has found wrong.</summary>
/// <remarks>One thread, one document; rented memory goes back on <see cref="Dispose"/>.</remarks>
internal sealed partial class ReadSession(ReadLimits limits, int formatVersion) : IDisposable
{
    private Frame[] frames = new Frame[8];
    private Slot[] slots = ArrayPool<Slot>.Shared.Rent(128);
    private byte[] scratch = [];
    private int depth = -1;
    private int usedSlots;

    public ReadLimits Limits { get; } = limits;

    /// <summary>The format version that the tables describe.</summary>
    public int FormatVersion { get; } = formatVersion;

    /// <summary>The version the document says it has, once that is known to differ from <see cref="FormatVersion"/>.</summary>
    public long? OtherVersion { get; set; }

    /// <summary>Where it says so, in bytes.</summary>
    public long OtherVersionOffset { get; set; }

    /// <summary>Begins an object.</summary>
    public void Enter(ObjectShape shape)
    {
        depth++;
        if (depth == frames.Length)
        {
            Array.Resize(ref frames, 2 * frames.Length);
        }

        frames[depth] = new Frame
        {
            Shape = shape,
            FirstSlot = usedSlots,
            Member = -1,
            Element = -1,
        };
        usedSlots += shape.Members.Length;
        if (usedSlots > slots.Length)
        {
            var larger = ArrayPool<Slot>.Shared.Rent(2 * usedSlots);
            slots.AsSpan().CopyTo(larger);
            ArrayPool<Slot>.Shared.Return(slots, clearArray: true);
            slots = larger;
        }
    }

    /// <summary>Ends the object begun last.</summary>
    public void Leave()
    {
        usedSlots = frames[depth].FirstSlot;
        depth--;
    }

    /// <summary>Moves to a member of the present object; -1 for none.</summary>
    public void AtMember(int member)
    {
        ref var frame = ref frames[depth];
        frame.Member = member;
        frame.Element = -1;
    }

    /// <summary>Moves to an element of the present member's list; -1 for none.</summary>
    public void AtElement(int element) => frames[depth].Element = element;

    /// <summary>Keeps the value of the present member.</summary>
    public void Keep(in Slot slot)
    {
        ref var frame = ref frames[depth];
        slots[frame.FirstSlot + frame.Member] = slot;
        frame.Valid |= 1UL << frame.Member;
    }

    /// <summary>The members of the present object that were read well.</summary>
    public ulong Valid => frames[depth].Valid;

    /// <summary>The values of the present object.</summary>
    public Slots Values
    {
        get
        {
            ref var frame = ref frames[depth];
            return new Slots(slots.AsSpan(frame.FirstSlot, frame.Shape.Members.Length), frame.Valid);
        }
    }

    /// <summary>Stops the reading when the object or list at the current token is nested too deeply.</summary>
    public void CheckDepth(ref Utf8JsonReader json)
    {
        if (json.CurrentDepth >= Limits.Depth)
        {
            Report(ReadingRules.DocumentUnreadable, json.TokenStartIndex, $"objects and lists are nested more than {Limits.Depth} deep");
            throw new ReadStoppedException();
        }
    }

    /// <summary>Passes over a value that is not read.</summary>
    public void Skip(ref Utf8JsonReader json)
    {
        if (json.TokenType is not (JsonTokenType.StartObject or JsonTokenType.StartArray))
        {
            return;
        }

        var start = json.CurrentDepth;
        do
        {
            if (json.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
            {
                CheckDepth(ref json);
            }

            json.Read();
        } while (json.CurrentDepth > start);
    }

    /// <summary>The text of a string or member name with escapes resolved, valid until the next call; false when it holds half of a surrogate pair.</summary>
    public bool TryUnescape(ref Utf8JsonReader json, out ReadOnlySpan<byte> text)
    {
        text = default;
        if (Escapes.HasLoneSurrogate(json.ValueSpan))
        {
            return false;
        }

        if (scratch.Length < json.ValueSpan.Length)
        {
            ReturnScratch();
            scratch = ArrayPool<byte>.Shared.Rent(json.ValueSpan.Length);
        }

        text = scratch.AsSpan(0, json.CopyString(scratch));
        return true;
    }

    public void Dispose()
    {
        ReturnScratch();
        ArrayPool<Slot>.Shared.Return(slots, clearArray: true);
        ReturnNames();
    }

    private void ReturnScratch()
    {
        if (scratch.Length > 0)
        {
            ArrayPool<byte>.Shared.Return(scratch);
        }
    }
}
