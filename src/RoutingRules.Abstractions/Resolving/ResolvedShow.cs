using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>A show with its references resolved, its signal graph and its demands.</summary>
/// <remarks>Immutable and thread safe. It exists for every readable show: what does not resolve is marked, not dropped.</remarks>
public sealed class ResolvedShow
{
    private ServedPoints? served;
    private EndPlaces? ears;
    private EndPlaces? loudspeakers;

    internal ResolvedShow() { }

    /// <summary>The document.</summary>
    public required Show Document { get; init; }

    /// <summary>The devices, in rig order.</summary>
    public required IReadOnlyList<DeviceNode> Devices { get; init; }

    /// <summary>What feeds what.</summary>
    public required SignalGraph Graph { get; init; }

    /// <summary>The routes, in document order.</summary>
    public required IReadOnlyList<RouteNode> Routes { get; init; }

    /// <summary>The streams, in document order.</summary>
    public required IReadOnlyList<StreamNode> Streams { get; init; }

    /// <summary>The cables, in document order.</summary>
    public required IReadOnlyList<CableNode> Cables { get; init; }

    /// <summary>The links, in document order.</summary>
    public required IReadOnlyList<LinkNode> Links { get; init; }

    /// <summary>The feeds, in document order.</summary>
    public required IReadOnlyList<FeedNode> Feeds { get; init; }

    /// <summary>The lines, in document order.</summary>
    public required IReadOnlyList<LineNode> Lines { get; init; }

    /// <summary>The demands: feed entries, then lines.</summary>
    public required IReadOnlyList<DemandNode> Demands { get; init; }

    /// <summary>Sinks that more than one route, stream, cable or link claims, in document order of the later one.</summary>
    public required IReadOnlyList<SinkConflict> Conflicts { get; init; }

    /// <summary>Sinks at which a route has no effect, in document order.</summary>
    public required IReadOnlyList<IdleRoute> IdleRoutes { get; init; }

    /// <summary>Network paths over the links.</summary>
    public required NetworkMap Network { get; init; }

    /// <summary>Points that do not work or are reserved, in document order.</summary>
    public required IReadOnlyList<MarkedPoint> Marks { get; init; }

    /// <summary>Where somebody hears with earpieces or headphones, and what leads there, whatever the feeds are called.</summary>
    internal EndPlaces Ears => Volatile.Read(ref ears) ?? Interlocked.CompareExchange(ref ears, EndPlaces.Ears(this), null) ?? ears;

    /// <summary>Where loudspeakers sound, and what leads there.</summary>
    internal EndPlaces Loudspeakers =>
        Volatile.Read(ref loudspeakers) ?? Interlocked.CompareExchange(ref loudspeakers, EndPlaces.Loudspeakers(this), null) ?? loudspeakers;

    /// <summary>The mark of a point, or null.</summary>
    public MarkedPoint? MarkOf(PointIndex point)
    {
        for (var i = 0; i < Marks.Count; i++)
        {
            var mark = Marks[i];
            if (point.Value >= mark.First.Value && point.Value < mark.First.Value + mark.Width)
            {
                return mark;
            }
        }

        return null;
    }

    /// <summary>The demand that a point serves in the patch as it stands, or null; of several lines at one input the first.</summary>
    public DemandNode? DemandAt(PointIndex point)
    {
        // A method group given to an initializer would be a new delegate on every call.
        return (Volatile.Read(ref served) ?? Interlocked.CompareExchange(ref served, new ServedPoints(Demands), null) ?? served).DemandAt(point);
    }
}
