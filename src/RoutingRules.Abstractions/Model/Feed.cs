namespace RoutingRules.Model;

/// <summary>An intention: this bus, or pair of buses, shall reach these destinations.</summary>
public sealed record Feed
{
    /// <summary>The id that demands and findings name.</summary>
    public required Id<Feed> Id { get; init; }

    /// <summary>What people call the mix.</summary>
    public string? Name { get; init; }

    /// <summary>What the feed is for; utility when nothing was said.</summary>
    public FeedRole Role { get; init; } = FeedRole.Utility;

    /// <summary>The set of feeds it belongs to, such as the left and right mains.</summary>
    public string? Set { get; init; }

    /// <summary>Its part of the set: left, right, centre, low and so on.</summary>
    public string? Part { get; init; }

    /// <summary>The bus; width 2 is a pair, left then right.</summary>
    public required PointRange Source { get; init; }

    /// <summary>Where it shall arrive; one demand for each entry.</summary>
    public ValueList<Destination> To { get; init; }

    /// <summary>What is dropped last when not everything fits.</summary>
    public Priority Priority { get; init; } = Priority.Normal;

    /// <summary>The wanted number of the first point in its group.</summary>
    public int? Preferred { get; init; }

    /// <summary>Whether an existing placement is hard; null means true for the roles main and in-ear.</summary>
    public bool? Hold { get; init; }

    /// <summary>Feeds of one group belong on one device.</summary>
    public string? Group { get; init; }

    /// <summary>Whether two entries must sit on different devices.</summary>
    public bool Spread { get; init; }

    /// <summary>Feeds that must not share a device, supply or link with this one.</summary>
    public ValueList<Separation> SeparateFrom { get; init; }

    /// <summary>The feed this one backs up.</summary>
    public Id<Feed>? BackupOf { get; init; }

    /// <summary>Whether a limiter is declared in the path; null when nothing was said.</summary>
    public bool? Limiter { get; init; }

    /// <summary>The delay set on purpose, in milliseconds, 0 or more; null when nothing was said.</summary>
    public double? DelayMilliseconds { get; init; }

    /// <summary>What puts it over everything else, and where, such as a relay before the amplifiers; for evacuation. Null when nothing was said.</summary>
    public string? Override { get; init; }

    /// <summary>Who listens to it.</summary>
    public string? Person { get; init; }

    /// <summary>The receiver pack, for in-ear feeds.</summary>
    public string? Pack { get; init; }

    /// <summary>Where on stage.</summary>
    public string? Position { get; init; }

    /// <summary>Anything a person should know.</summary>
    public string? Notes { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
