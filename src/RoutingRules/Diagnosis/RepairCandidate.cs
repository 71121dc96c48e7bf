namespace RoutingRules.Diagnosis;

/// <summary>A repair that may be the cause of wants that are not met.</summary>
internal sealed class RepairCandidate
{
    public required RepairKind Kind { get; init; }

    public required Hop Hop { get; init; }

    public required PatchChange Change { get; init; }

    public required Overlay Overlay { get; init; }

    /// <summary>By how many points a run moves back; 0 when there is nothing to say.</summary>
    public int Distance { get; init; }

    /// <summary>What it asks of hands and of the order in the patch; smaller is likelier.</summary>
    public required int Rank { get; init; }

    /// <summary>The wants that it meets, in order.</summary>
    public required List<Want> Solved { get; init; }
}
