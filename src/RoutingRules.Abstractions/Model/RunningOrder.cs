namespace RoutingRules.Model;

/// <summary>The acts of one stage in the order in which they play, on one rig.</summary>
public sealed record RunningOrder
{
    /// <summary>The version of the format.</summary>
    public int SchemaVersion { get; init; } = 1;

    /// <summary>What the event is called.</summary>
    public required string Title { get; init; }

    /// <summary>Where it takes place; null when the document does not say.</summary>
    public string? Venue { get; init; }

    /// <summary>The first day; null when the document does not say.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The revision of the document; null when it has none.</summary>
    public string? Revision { get; init; }

    /// <summary>The equipment all acts share.</summary>
    public required Rig Rig { get; init; }

    /// <summary>Feeds that every act has unless it says otherwise: the house system.</summary>
    public ValueList<Feed> Feeds { get; init; }

    /// <summary>Lines that every act has unless it says otherwise: talkback, music from a player.</summary>
    public ValueList<Line> Lines { get; init; }

    /// <summary>The patch before the first act.</summary>
    public Patch Patch { get; init; } = new();

    /// <summary>House feeds that no act may change, leave out or move.</summary>
    public ValueList<Id<Feed>> Locked { get; init; }

    /// <summary>How long things take.</summary>
    public Pace Pace { get; init; } = new();

    /// <summary>The acts, in the order in which they play.</summary>
    public ValueList<Act> Acts { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
