using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>One option of a wiring task.</summary>
internal sealed class Choice
{
    /// <summary>The transmit block.</summary>
    public required TransmitBlock From { get; init; }

    /// <summary>Receive blocks that take slots of it.</summary>
    public required ReceiveBlock[] Blocks { get; init; }

    /// <summary>The slot each receive block starts from.</summary>
    public required int[] Starts { get; init; }

    /// <summary>For a free need: the slots of its sources.</summary>
    public int[] Slots { get; init; } = [];

    /// <summary>The block of each side of a pair whose sides come through two that take the same slots; null when it is told by the slot.</summary>
    public ReceiveBlock[]? BySide { get; init; }

    /// <summary>For a free need: the receive slots at which its sources arrive.</summary>
    public int[] ReceiveSlots => [.. Slots.Select((_, side) => ReceiveSlotOf(side))];

    /// <summary>
    /// How much of it stands in the input: slots that carry the wanted source, blocks that take the same slots, routes from the receive slots.
    /// </summary>
    public int Familiar { get; set; }

    /// <summary>Position among the options of the task.</summary>
    public required int Rank { get; init; }

    /// <summary>The cost of the wiring so far with this option.</summary>
    public WiringCost Cost { get; set; }

    /// <summary>The receive block that takes the slot of a source.</summary>
    public ReceiveBlock BlockOf(int side) => Blocks[IndexOf(side)];

    /// <summary>The receive slot at which a source arrives.</summary>
    public int ReceiveSlotOf(int side)
    {
        var i = IndexOf(side);
        return Blocks[i].First + Slots[side] - Starts[i];
    }

    private int IndexOf(int side)
    {
        if (BySide is not null)
        {
            return Array.IndexOf(Blocks, BySide[side]);
        }

        var slot = Slots[side];
        for (var i = 0; i < Blocks.Length; i++)
        {
            if (slot >= Starts[i] && slot < Starts[i] + Blocks[i].Width)
            {
                return i;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(side), side, "No receive block of the option takes the slot.");
    }
}
