using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A stream on a network.</summary>
public sealed record NetworkStream
{
    /// <summary>The stream.</summary>
    public required Id<AudioStream> Id { get; init; }

    /// <summary>What people call it; null when the document does not say.</summary>
    public string? Label { get; init; }

    /// <summary>The sender and its slots, in words.</summary>
    public required string From { get; init; }

    /// <summary>Each receiver with its slots and channels, in words.</summary>
    public ValueList<string> To { get; init; }

    /// <summary>How many channels it has.</summary>
    public required int Channels { get; init; }

    /// <summary>How many of them carry a signal.</summary>
    public required int Used { get; init; }

    /// <summary>
    /// What it puts on the wire, headers and gaps counted; null when the engine has no numbers for the transport or the stream does not start.
    /// </summary>
    public double? BitsPerSecond { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
