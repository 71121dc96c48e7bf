using RoutingRules.Model;

namespace RoutingRules.Reporting.Sheets;

/// <summary>The sheets of a show: everything a crew needs to patch it and check it.</summary>
/// <remarks>A value: immutable, compared by content. Sentences are English; numbers and dates do not depend on a culture.</remarks>
public sealed record Sheet
{
    /// <summary>What stands at the top of every page.</summary>
    public required SheetHead Head { get; init; }

    /// <summary>What is not patched yet or not as the document asks, feeds first; empty when nothing is missing.</summary>
    public ValueList<SheetGap> Gaps { get; init; }

    /// <summary>One sheet for each device, in rig order.</summary>
    public ValueList<DeviceSheet> Devices { get; init; }

    /// <summary>The lines by the channel of their first console, consoles in rig order.</summary>
    public ValueList<LineCheck> LineChecks { get; init; }

    /// <summary>The same lines by zone in walking order, then by device.</summary>
    public ValueList<LineCheckStop> Walk { get; init; }

    /// <summary>The mixes: in-ear feeds first, then the others in document order.</summary>
    public ValueList<OutputCheck> OutputChecks { get; init; }

    /// <summary>Sentences that every page carries.</summary>
    public ValueList<string> Cautions { get; init; }
}
