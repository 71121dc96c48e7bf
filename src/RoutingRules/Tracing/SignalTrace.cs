using RoutingRules.Model;

namespace RoutingRules.Tracing;

/// <summary>Where the signal at a point comes from and everywhere it goes.</summary>
/// <remarks>Immutable, with value equality over every member.</remarks>
public sealed record SignalTrace
{
    /// <summary>The point asked about.</summary>
    public required TracePoint At { get; init; }

    /// <summary>The steps that lead to it, in the direction of the signal; empty when nothing feeds it.</summary>
    public required ValueList<TraceHop> Upstream { get; init; }

    /// <summary>What stands at the beginning of the way.</summary>
    public required TraceStart Start { get; init; }

    /// <summary>The point at the beginning of the way; for a loop the point at which it closes.</summary>
    public required TracePoint StartAt { get; init; }

    /// <summary>What stands at the beginning of the way, in a sentence that names the place and, when it is silent, the remedy.</summary>
    public required string StartReason { get; init; }

    /// <summary>True when a real source is reached, so that the point is not silent.</summary>
    public bool HasSource => Start is TraceStart.Source or TraceStart.OpenInput or TraceStart.Selector;

    /// <summary>Everything the point feeds: a tree, each branch before its own branches, in point order.</summary>
    public required ValueList<TraceBranch> Downstream { get; init; }

    /// <summary>Sum of all latencies that the document states on the way from the beginning to the point, in milliseconds; null when it states none.</summary>
    /// <remarks>Port groups passed, both ends included, paths through devices and packet times; what is not stated counts nothing.</remarks>
    public double? KnownLatencyMilliseconds
    {
        get
        {
            double? sum = StartAt.LatencyMilliseconds;
            foreach (var hop in Upstream)
            {
                sum = Add(Add(sum, hop.LatencyMilliseconds), hop.To.LatencyMilliseconds);
            }

            return sum;
        }
    }

    private static double? Add(double? sum, double? part) => part is null ? sum : (sum ?? 0) + part;
}
