namespace RoutingRules.Planning.Losses;

/// <summary>A loss that was looked at, with what a plan starts from.</summary>
internal sealed record FoundLoss
{
    /// <summary>What fails.</summary>
    public required int[] Units { get; init; }

    /// <summary>The deliveries that fall silent.</summary>
    public required HashSet<int> Silenced { get; init; }

    public required LossImpact Impact { get; init; }
}
