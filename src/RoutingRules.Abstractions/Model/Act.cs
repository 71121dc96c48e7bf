namespace RoutingRules.Model;

/// <summary>One act of a running order: what it adds to, changes in and leaves out of what the house has.</summary>
public sealed record Act
{
    /// <summary>The id.</summary>
    public required Id<Act> Id { get; init; }

    /// <summary>What people call it; null to use the id.</summary>
    public string? Name { get; init; }

    /// <summary>The day it plays; null for the day of the running order.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>When it begins to play, on a clock of 24 hours; null when the running order does not say.</summary>
    public TimeOnly? Start { get; init; }

    /// <summary>Minutes between the end of the act before and the start; null when the running order does not say. The first act needs none.</summary>
    public int? ChangeoverMinutes { get; init; }

    /// <summary>Ids of house feeds and house lines that this act does without.</summary>
    public ValueList<string> Without { get; init; }

    /// <summary>Feeds of the act; one with the id of a house feed takes its place.</summary>
    public ValueList<Feed> Feeds { get; init; }

    /// <summary>Lines of the act; one with the id of a house line takes its place.</summary>
    public ValueList<Line> Lines { get; init; }

    /// <summary>
    /// The whole patch of the act as somebody made it; null to have it worked out from the patch of the act before, with as little re-plugging as can be.
    /// </summary>
    public Patch? Patch { get; init; }

    /// <summary>Notes for people.</summary>
    public string? Notes { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }

    /// <summary>The name, or else the id.</summary>
    public string DisplayName => Name ?? Id.Value;
}
