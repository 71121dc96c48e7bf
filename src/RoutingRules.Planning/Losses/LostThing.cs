namespace RoutingRules.Planning.Losses;

/// <summary>A thing that fails.</summary>
public sealed record LostThing
{
    /// <summary>What it is.</summary>
    public required LossKind Kind { get; init; }

    /// <summary>
    /// Its name: the id of a device, link or supply, the address of a point, both ends of a cable such as <c>box/out/1-2 to amp/in/1-2</c>, the name of a
    /// loom with the device it leaves, such as <c>loom B at box</c>.
    /// </summary>
    public required string Id { get; init; }

    /// <summary>What is written on a device; null for none and for other things.</summary>
    public string? Label { get; init; }
}
