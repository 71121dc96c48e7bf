using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>The sheets of a show: everything a crew needs to patch it and check it.</summary>
/// <remarks>A value: immutable, compared by content. Sentences are English; numbers and dates do not depend on a culture.</remarks>
public sealed record Sheet
{
    /// <summary>What stands at the top of every page.</summary>
    public required SheetHead Head { get; init; }

    /// <summary>What is not patched yet or not as the document asks, feeds first; empty when nothing is missing.</summary>
    public ValueList<SheetGap> Gaps { get; init; }

    /// <summary>
    /// What differs from the older revision: devices, outputs, inputs, channels, lines, mixes; empty when nothing does or nothing is compared.
    /// </summary>
    public ValueList<SheetDifference> Differences { get; init; }

    /// <summary>Drawings of what runs between the devices.</summary>
    public ValueList<SheetFlow> Flows { get; init; }

    /// <summary>One sheet for each device, in rig order.</summary>
    public ValueList<DeviceSheet> Devices { get; init; }

    /// <summary>The lines by the channel of their first console, consoles in rig order.</summary>
    public ValueList<LineCheck> LineChecks { get; init; }

    /// <summary>The same lines by zone in walking order, then by device.</summary>
    public ValueList<LineCheckStop> Walk { get; init; }

    /// <summary>The mixes: in-ear feeds first, then the others in document order.</summary>
    public ValueList<OutputCheck> OutputChecks { get; init; }

    /// <summary>Who listens to what: in-ear feeds first, then others that have a person or a pack, in document order.</summary>
    public ValueList<SheetPack> Packs { get; init; }

    /// <summary>One sheet for each network, in rig order.</summary>
    public ValueList<NetworkSheet> Networks { get; init; }

    /// <summary>Latency from source to destination by role, then of lines; empty kinds are left out.</summary>
    public ValueList<SheetLatency> Latencies { get; init; }

    /// <summary>The parts that writers print, each once in the order of their kinds; never empty.</summary>
    public ValueList<SheetSection> Parts { get; init; }

    /// <summary>True when every device has its page, also one that is only cabled: devices were chosen, or their pages were asked for.</summary>
    public bool HasAllDevices { get; init; }

    /// <summary>Rows left blank at the end of lists.</summary>
    public int BlankRows { get; init; }

    /// <summary>True for larger type where the writer has type.</summary>
    public bool IsLargeType { get; init; }

    /// <summary>True with the drawing of every signal through each device; pages of chosen devices always have it.</summary>
    public bool HasDrawings { get; init; }

    /// <summary>Sentences that every page carries.</summary>
    public ValueList<string> Cautions { get; init; }
}
