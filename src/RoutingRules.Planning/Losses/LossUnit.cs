namespace RoutingRules.Planning.Losses;

/// <summary>A thing that can fail with what goes with it.</summary>
internal sealed class LossUnit
{
    public required LostThing Thing { get; init; }

    /// <summary>Position of the device or link in the rig, of the supply among supplies, or the point; 0 for cables and looms.</summary>
    public int Index { get; init; }

    /// <summary>The cables, by position in the rig; for cables and looms.</summary>
    public int[] Cables { get; init; } = [];
}
