using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>One thing to place: an entry of a feed's list, or a line.</summary>
internal sealed class DemandFacts
{
    public required string Key { get; init; }

    /// <summary>Position in demand order.</summary>
    public required int Index { get; init; }

    public Feed? Feed { get; init; }

    public Line? Line { get; init; }

    /// <summary>Position in the feed's list, from 0.</summary>
    public int Entry { get; init; }

    public required int Width { get; init; }

    /// <summary>True when the document names the points.</summary>
    public required bool IsPinned { get; init; }

    /// <summary>The runs that may serve it, marks ignored. For a line with several points every one of them, the first being its place.</summary>
    public required RunSet Runs { get; init; }

    /// <summary>Pairs that start even: never chosen, but one that exists may stay.</summary>
    public RunSet EvenRuns { get; init; } = RunSet.Empty;

    /// <summary>Where it is served in the input.</summary>
    public PointRange? Existing { get; set; }

    public bool IsHeld { get; set; }

    public bool IsSplit => Line is not null && IsPinned && Runs.Count > 1;

    public Priority Priority => Line?.Priority ?? Feed!.Priority;

    public int? Preferred => Line is { } line ? line.Preferred : Feed!.Preferred;

    /// <summary>The sinks of a line; one that is listed twice counts once.</summary>
    public IEnumerable<PointRange> Sinks => Line?.To.Distinct() ?? [];

    /// <summary>How many deliveries it stands for.</summary>
    public int Deliveries => Line is null ? 1 : Sinks.Count();

    /// <summary>The points it takes when it is placed at a run.</summary>
    public IEnumerable<Point> Occupies(PointRange at)
    {
        IEnumerable<PointRange> runs = IsSplit ? Runs : [at];
        foreach (var run in runs)
        {
            for (var i = 0; i < run.Width; i++)
                yield return run[i];
        }
    }
}
