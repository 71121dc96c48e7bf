using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>What a crew needs to know of a line to set it up.</summary>
public sealed record SheetLineInfo
{
    /// <summary>The line.</summary>
    public required Id<Line> Id { get; init; }

    /// <summary>The name or id, with L or R for a half of a pair.</summary>
    public required string Name { get; init; }

    /// <summary>Whether it wants phantom power.</summary>
    public required PhantomNeed Phantom { get; init; }

    /// <summary>Microphone, direct box or other equipment.</summary>
    public string? Equipment { get; init; }

    /// <summary>The stand.</summary>
    public string? Stand { get; init; }

    /// <summary>Where on stage.</summary>
    public string? Position { get; init; }

    /// <summary>Who brings it.</summary>
    public string? SuppliedBy { get; init; }

    /// <summary>Anything a person should know.</summary>
    public string? Notes { get; init; }
}
