namespace RoutingRules.Documents.Tables;

/// <summary>An object: its members in the order they are written, and which of them exclude each other.</summary>
internal sealed class ObjectShape
{
    private readonly byte[][] names;

    /// <param name="definition">Its name in schemas.</param>
    /// <param name="title">What people call it, in the singular.</param>
    /// <param name="doc">What it is.</param>
    /// <param name="members">At most 64.</param>
    /// <param name="choice">Sets of members, as bits, of which exactly one must be there; empty when members are free.</param>
    /// <param name="open">Whether other members may be there too.</param>
    public ObjectShape(string definition, string title, string doc, MemberShape[] members, ulong[] choice, bool open = false)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(members.Length, 64);
        Definition = definition;
        Title = title;
        Doc = doc;
        Members = members;
        Choice = choice;
        Open = open;
        IdIndex = -1;
        names = new byte[members.Length][];
        for (var i = 0; i < members.Length; i++)
        {
            names[i] = members[i].NameUtf8;
            RequiredMask |= members[i].Required ? 1UL << i : 0;
            IdIndex = members[i].Name == "id" ? i : IdIndex;
        }
    }

    public string Definition { get; }

    public string Title { get; }

    public string Doc { get; }

    public MemberShape[] Members { get; }

    public ulong[] Choice { get; }

    public bool Open { get; }

    public ulong RequiredMask { get; }

    /// <summary>The position of the member <c>id</c>, or -1.</summary>
    public int IdIndex { get; }

    /// <summary>The position of a member, tried first at <paramref name="expected"/> since documents keep the usual order; -1 when there is none.</summary>
    public int Find(ReadOnlySpan<byte> name, int expected)
    {
        var all = names;
        for (var i = expected; i < all.Length; i++)
        {
            if (all[i].AsSpan().SequenceEqual(name))
            {
                return i;
            }
        }

        for (var i = 0; i < expected; i++)
        {
            if (all[i].AsSpan().SequenceEqual(name))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>The member whose name is closest to a misspelt one, at most two edits away; null when none is.</summary>
    public string? Nearest(string name) => Spelling.Nearest(name, Members.Select(member => member.Name));
}
