using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A step outside routing on the way to a point.</summary>
public sealed record SheetHop
{
    /// <summary>A stream, a carrier link or a cable.</summary>
    public required HopKind Kind { get; init; }

    /// <summary>The id of the stream or link; null for a cable.</summary>
    public string? Id { get; init; }

    /// <summary>The stream channel, from 1; 0 when it is no stream.</summary>
    public int Channel { get; init; }

    /// <summary>Where the step ends: the receive slot or the input.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The way the cable takes; null when nothing was said.</summary>
    public string? Way { get; init; }
}
