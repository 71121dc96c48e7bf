using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>A show with what stands written down as points.</summary>
public sealed record PinResult
{
    /// <summary>The show with the points.</summary>
    public required Show Show { get; init; }

    /// <summary>The edits that make it, one after the other.</summary>
    public required ValueList<ShowEdit> Edits { get; init; }

    /// <summary>What was written down, in the order of the demands.</summary>
    public required ValueList<PinnedPlace> Pinned { get; init; }

    /// <summary>The demands that name no point and are not served, so that there is nothing to write down, in order.</summary>
    public required ValueList<string> Open { get; init; }
}
