using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>The smallest sets of failures that silence a protected feed and every feed that backs it up.</summary>
/// <remarks>
/// Every set up to <see cref="Limit"/> things was looked at: where there is none, none of that size exists among the kinds that were asked for.
/// </remarks>
public sealed record FailureSets
{
    /// <summary>The feed.</summary>
    public required string Feed { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>What it is for.</summary>
    public required FeedRole Role { get; init; }

    /// <summary>How much it matters.</summary>
    public required Priority Priority { get; init; }

    /// <summary>Sets of which each silences it and no part of one does, small ones first; the first <see cref="MostSets"/>.</summary>
    public required ValueList<ValueList<LostThing>> Sets { get; init; }

    /// <summary>How many more sets there are up to the limit.</summary>
    public int Omitted { get; init; }

    /// <summary>The largest size that was looked at.</summary>
    public required int Limit { get; init; }

    /// <summary>How many sets are listed at most.</summary>
    public const int MostSets = 24;

    /// <summary>The size of the smallest set; null when there is none up to the limit.</summary>
    public int? Smallest => Sets.IsEmpty ? null : Sets[0].Count;
}
