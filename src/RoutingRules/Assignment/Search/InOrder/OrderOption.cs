namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>One place for one demand, as the search in list order sees it.</summary>
internal sealed class OrderOption
{
    /// <summary>Position among the demand's candidates.</summary>
    public required int Choice { get; init; }

    /// <summary>Position of the device among those of the search.</summary>
    public required int Device { get; init; }

    /// <summary>Position of the port group among those of the search.</summary>
    public required int Group { get; init; }

    public required int Number { get; init; }

    public required int Width { get; init; }

    /// <summary>What it costs whatever else is placed, by number of the vector.</summary>
    public required int[] Cost { get; init; }

    /// <summary>Blocks it uses by its place alone: receive blocks for feeds, the transmit block for lines. Ascending.</summary>
    public int[] Blocks { get; init; } = [];

    /// <summary>Position of the device that feeds its receive blocks; -1 when it needs none.</summary>
    public int Sender { get; init; } = -1;

    /// <summary>For each of the blocks: receivers that take it, or the mark of a source of its own, as bits.</summary>
    public int[] Marks { get; init; } = [];

    /// <summary>Counters of freely packed sources it adds to, and by how much.</summary>
    public (int Pool, int Amount)[] Pools { get; init; } = [];

    /// <summary>True when it asks for spares in its group.</summary>
    public bool AsksForSpares { get; init; }

    /// <summary>How many outputs it takes that would count as spares.</summary>
    public int Spares { get; init; }
}
