using RoutingRules.Rules;

namespace RoutingRules.Waivers;

/// <summary>A finding with the waiver that excuses it.</summary>
public sealed record WaivedFinding
{
    /// <summary>The finding.</summary>
    public required Finding Finding { get; init; }

    /// <summary>The first waiver in the list that fits it and has not expired.</summary>
    public required Waiver Waiver { get; init; }
}
