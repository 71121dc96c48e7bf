using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>A feed or line that a loss harms.</summary>
public sealed record LostSubject
{
    /// <summary>The id.</summary>
    public required string Subject { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>What the feed is for; null for a line.</summary>
    public FeedRole? Role { get; init; }

    /// <summary>True for a feed that ends in somebody's ears, whatever its role says.</summary>
    public bool IsInEar { get; init; }

    /// <summary>How much it matters.</summary>
    public required Priority Priority { get; init; }

    /// <summary>True for a feed that is critical, of high priority, a main or an in-ear feed.</summary>
    public bool IsProtected => Role is { } role && (Priority <= Priority.High || role == FeedRole.Main || IsInEar);

    /// <summary>Who listens to it; null when the document does not say.</summary>
    public string? Person { get; init; }

    /// <summary>What becomes of it.</summary>
    public required LossFate Fate { get; init; }

    /// <summary>Where it no longer arrives: outputs or pinned sinks of a feed, sinks of a line.</summary>
    public required ValueList<PointRange> LostAt { get; init; }

    /// <summary>Where it still arrives.</summary>
    public ValueList<PointRange> RemainsAt { get; init; }

    /// <summary>Feeds that back it up and still arrive, directly or one behind the other.</summary>
    public ValueList<string> Backups { get; init; }
}
