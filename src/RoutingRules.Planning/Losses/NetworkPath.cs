using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>The way of streams from one device to another over a network.</summary>
internal sealed class NetworkPath
{
    public required int Network { get; init; }

    public required DeviceNode From { get; init; }

    public required DeviceNode To { get; init; }

    /// <summary>The receive slots that signal reaches over it.</summary>
    public List<int> Slots { get; } = [];

    /// <summary>The streams that use it, in document order.</summary>
    public SortedSet<int> Streams { get; } = [];

    /// <summary>The links as it stands; empty where the network names none, null when there is no way.</summary>
    public IReadOnlyList<int>? Links { get; set; }
}
