using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>A show in which feeds and lines may stand at any connector of the device they named one of.</summary>
public sealed record UnpinResult
{
    /// <summary>The show without the points.</summary>
    public required Show Show { get; init; }

    /// <summary>The edits that make it, one after the other.</summary>
    public required ValueList<ShowEdit> Edits { get; init; }

    /// <summary>What was let free, with the point it named, in the order of the demands.</summary>
    public required ValueList<PinnedPlace> Freed { get; init; }

    /// <summary>What keeps its points, in order: lines at several legs of a split, and what could not stand there without its name.</summary>
    public required ValueList<string> Left { get; init; }
}
