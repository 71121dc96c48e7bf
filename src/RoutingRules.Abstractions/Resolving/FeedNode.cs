using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>A feed with its source and its demands.</summary>
public sealed class FeedNode
{
    /// <summary>The feed as written.</summary>
    public required Feed Model { get; init; }

    /// <summary>Position in the document, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>First source point; none when it does not resolve.</summary>
    public required PointIndex Source { get; init; }

    /// <summary>Whether the source resolves.</summary>
    public required ConnectionState SourceState { get; init; }

    /// <summary>Position of its first demand in <see cref="ResolvedShow.Demands"/>; it has one for each entry of <c>to</c>, in order.</summary>
    public required int FirstDemand { get; init; }

    /// <summary>The name, or else the id.</summary>
    public string DisplayName => Model.Name ?? Model.Id.Value;

    /// <summary>How many points wide: 1, or 2 for a pair.</summary>
    public int Width => Model.Source.Width;
}
