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

    /// <summary>How much of it stands in the input: slots that carry the wanted source, blocks that take the same slots, routes from the receive slots.</summary>
    public int Familiar { get; set; }

    /// <summary>Position among the options of the task.</summary>
    public required int Rank { get; init; }

    /// <summary>The cost of the wiring so far with this option.</summary>
    public WiringCost Cost { get; set; }

    /// <summary>The receive block that takes a slot.</summary>
    public ReceiveBlock BlockFor(int slot) => Blocks[IndexFor(slot)];

    /// <summary>The receive slot that takes a slot.</summary>
    public int ReceiveSlotFor(int slot)
    {
        var i = IndexFor(slot);
        return Blocks[i].First + slot - Starts[i];
    }

    private int IndexFor(int slot)
    {
        for (var i = 0; i < Blocks.Length; i++)
        {
            if (slot >= Starts[i] && slot < Starts[i] + Blocks[i].Width)
            {
                return i;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(slot), slot, "No receive block of the option takes the slot.");
    }
}
