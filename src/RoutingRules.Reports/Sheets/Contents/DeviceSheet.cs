using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>The sheet of one device.</summary>
public sealed record DeviceSheet
{
    /// <summary>The device.</summary>
    public required Id<Device> Id { get; init; }

    /// <summary>What is written on it, or else its id.</summary>
    public required string Label { get; init; }

    /// <summary>The name of its profile.</summary>
    public required string Type { get; init; }

    /// <summary>The zone with its side in the chosen view; null when the device stands in none.</summary>
    public string? Zone { get; init; }

    /// <summary>The supplies that feed it.</summary>
    public ValueList<string> Power { get; init; }

    /// <summary>Anything a person should know.</summary>
    public string? Notes { get; init; }

    /// <summary>
    /// True when nothing of the show is plugged, patched or marked here: it is only cabled to others, once, when the rig is built. Unless it was asked for or
    /// has changed, it gets no page.
    /// </summary>
    public bool IsOnlyCabled { get; init; }

    /// <summary>One table for each group of outputs.</summary>
    public ValueList<SheetTable<SheetOutput>> Outputs { get; init; }

    /// <summary>One table for each group of inputs.</summary>
    public ValueList<SheetTable<SheetInput>> Inputs { get; init; }

    /// <summary>One table for each group of channels or tracks.</summary>
    public ValueList<SheetTable<SheetChannel>> Channels { get; init; }

    /// <summary>One table for each group of buses or other internal sources.</summary>
    public ValueList<SheetTable<SheetBus>> Buses { get; init; }

    /// <summary>Streams it sends, in document order, then carrier links.</summary>
    public ValueList<SheetSentStream> Sent { get; init; }

    /// <summary>Streams it takes, in document order, then carrier links.</summary>
    public ValueList<SheetReceivedStream> Received { get; init; }

    /// <summary>Network slots that no stream uses, as runs.</summary>
    public ValueList<PointRange> FreeSlots { get; init; }

    /// <summary>Its network jacks.</summary>
    public ValueList<SheetJack> Jacks { get; init; }

    /// <summary>Drawings of the signals that start, pass or end here.</summary>
    public ValueList<SheetFlow> Flows { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
